import type { Across, Connect, JointStatement, Side } from '@dryfit/engine';
import type { AcrossFact, ConnectFact, DatumFact, ReferenceFact } from '../generated/ast.js';
import { readWritten } from './measure.js';
import { readPlane } from './plane.js';
import type { StatementReading } from './reading.js';
import type { Places } from './source.js';
import { readLayout } from './stock/pattern.js';

/**
 * What holds a joint. A connector or lines that cannot be told have been reported; they keep the name written, which
 * means nothing to the shop, so that the joint is not taken for one that nobody thought of.
 */
export function readConnect(node: ConnectFact, reading: StatementReading): Connect {
  const source = reading.places.of(node);
  if (node.none !== undefined) return { kind: 'none', reason: node.none, source };
  const connector = node.connector?.ref?.name ?? `unknown ${node.connector?.$refText ?? ''}`;
  const pattern = node.layout ? readLayout(node.layout, reading) : node.pattern?.ref?.name;
  return { kind: 'by', connector, pattern: pattern ?? `unknown ${node.pattern?.$refText ?? ''}`, source };
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
