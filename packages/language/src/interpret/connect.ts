import type { Across, Connect, JointStatement, Side } from '@dryfit/engine';
import type { AcrossFact, ConnectFact, DatumFact, ReferenceFact } from '../generated/ast.js';
import { readWritten } from './measure.js';
import { readPlane } from './plane.js';
import type { StatementReading } from './reading.js';
import type { Places } from './source.js';
import { readLayout } from './stock/pattern.js';

/** What holds a joint; undefined where its connector or its lines cannot be told, which has been reported. */
export function readConnect(node: ConnectFact, reading: StatementReading): Connect | undefined {
  const source = reading.places.of(node);
  if (node.none !== undefined) return { kind: 'none', reason: node.none, source };
  const connector = node.connector?.ref;
  if (!connector) return undefined;
  const pattern = node.layout ? readLayout(node.layout, reading) : node.pattern?.ref?.name;
  return pattern === undefined ? undefined : { kind: 'by', connector: connector.name, pattern, source };
}

export function readDatum(node: DatumFact, reading: StatementReading): JointStatement['datum'] {
  const source = reading.places.of(node);
  if (node.side !== undefined) return { side: node.side, source };
  const plane = readPlane(node.plane, reading);
  return plane && { side: plane.plane, plane, source };
}

export function readReference(node: ReferenceFact, places: Places): JointStatement['reference'] {
  if (node.face === undefined) return undefined;
  return { side: node.face as Side | 'outer' | 'inner', source: places.of(node) };
}

export function readAcross(node: AcrossFact, reading: StatementReading): Across | undefined {
  const source = reading.places.of(node);
  if (!node.distance) return { kind: 'centred', source };
  const distance = readWritten(node.distance, reading);
  return distance && { kind: 'at', distance, source };
}
