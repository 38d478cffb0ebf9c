import {
  type Finding,
  type Input,
  type PartId,
  type Shop,
  type Side,
  type Spec,
  type Statement,
  say,
} from '@dryfit/engine';
import { writtenTwice } from '../checks/written-twice.js';
import type { Cabinet, CabinetItem, ConnectFact, DatumFact, MilledLine, MoistureLine } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';
import { Anchor } from './anchor.js';
import { readConnect, readDatum } from './connect.js';
import { idOfCorner, readCant, readNotch } from './corners.js';
import { idOfJoint, readJoint } from './joint.js';
import { idOfLoad, idOfMoisture, readLoad, readMoisture } from './load.js';
import { type Overrides, Parameters } from './parameters.js';
import { Parts } from './parts.js';
import { type CabinetReading, StatementReading, type Walls } from './reading.js';
import { readSilences } from './silences.js';
import { Places } from './source.js';
import { idOfBand, idOfDimension, idOfPlacing, readBandLine, readDimension, readPlacing } from './statements.js';

/** What a cabinet is read with. */
export interface Surroundings {
  readonly shop: Shop;
  /** The units of the cabinet's file. */
  readonly unit: Unit;
  readonly thickness: Spec['thickness'];
}

/** A cabinet as data for the engine, and what of its text could not be read or does not agree with itself. */
export interface Interpreted {
  readonly spec: Spec;
  readonly findings: readonly Finding[];
  /** Moves every place in spec and findings, and in whatever is worked out from these, with the cabinet. */
  readonly anchor: Anchor;
}

/** Values a job gives are in `overrides`; every other parameter has the value written beside it. */
export function interpretCabinet(cabinet: Cabinet, overrides: Overrides, around: Surroundings): Interpreted {
  const anchor = new Anchor(cabinet.$cstNode?.offset ?? 0);
  const places = new Places(cabinet, anchor);
  const findings: Finding[] = [];
  const report = (finding: Finding) => void findings.push(finding);
  const { unit, shop, thickness } = around;
  const parameters = new Parameters(overrides, places, unit, report);
  parameters.readAll(cabinet);
  const parts = new Parts(places, report);
  parts.readAll(cabinet, { places, unit, report, parameter: (parameter) => parameters.value(parameter) });
  const inputs: Input[] = [];
  const reading: CabinetReading = { places, unit, parameters, parts, walls: wallsOf(cabinet, parts), inputs, report };

  const statements: Statement[] = [];
  const ids = new Map<string, number>();
  for (const item of cabinet.items) {
    const id = idOf(item);
    if (id === undefined) continue;
    const count = (ids.get(id) ?? 0) + 1;
    ids.set(id, count);
    const statement = readStatement(item, new StatementReading(count === 1 ? id : `${id} (${count})`, reading));
    if (statement) statements.push(statement);
  }

  const defaults = new StatementReading('cabinet', reading);
  const connect = only<ConnectFact>(cabinet, 'ConnectFact', 'connect', reading);
  const datum = only<DatumFact>(cabinet, 'DatumFact', 'datum', reading);
  only<MoistureLine>(cabinet, 'MoistureLine', 'moisture', reading);
  const milled = only<MilledLine>(cabinet, 'MilledLine', 'milled', reading);
  const datumSide = datum && readDatum(datum, defaults);
  const spec: Spec = {
    name: cabinet.name ?? '',
    source: places.of(cabinet),
    nameSource: places.property(cabinet, 'name'),
    parameters: parameters.values,
    inputs: [...parameters.inputs, ...inputs],
    parts: parts.specs,
    statements,
    connect: connect && readConnect(connect, defaults),
    datum: datumSide && { side: datumSide.side, source: datumSide.source },
    milled: {
      when: milled?.when === 'before' ? 'before banding' : 'after banding',
      source: milled && places.of(milled),
    },
    silences: readSilences(
      cabinet.items.filter((item) => item.$type === 'Silence'),
      reading,
    ),
    shop,
    thickness,
  };
  return { spec, findings, anchor };
}

/** The name of a statement, from the names in it and never from where it stands. */
function idOf(item: CabinetItem): string | undefined {
  switch (item.$type) {
    case 'DimensionLine':
      return idOfDimension(item);
    case 'Joint':
      return idOfJoint(item);
    case 'Placing':
      return idOfPlacing(item);
    case 'NotchLine':
    case 'CantLine':
      return idOfCorner(item);
    case 'BandLine':
      return idOfBand(item);
    case 'LoadLine':
      return idOfLoad(item);
    case 'MoistureLine':
      return idOfMoisture();
    default:
      return undefined;
  }
}

function readStatement(item: CabinetItem, reading: StatementReading): Statement | undefined {
  switch (item.$type) {
    case 'DimensionLine':
      return readDimension(item, reading);
    case 'Joint':
      return readJoint(item, reading);
    case 'Placing':
      return readPlacing(item, reading);
    case 'NotchLine':
      return readNotch(item, reading);
    case 'CantLine':
      return readCant(item, reading);
    case 'BandLine':
      return readBandLine(item, reading);
    case 'LoadLine':
      return readLoad(item, reading);
    case 'MoistureLine':
      return readMoisture(item, reading);
    default:
      return undefined;
  }
}

/** Which parts sit in grooves and which are notched or canted, by the names written: planes may be named before their cut. */
function wallsOf(cabinet: Cabinet, parts: Parts): Walls {
  const grooved = new Set<PartId>();
  const notched = new Map<PartId, Map<Side, number>>();
  const canted = new Map<PartId, Side>();
  for (const item of cabinet.items) {
    if (item.$type === 'Joint' && item.verb === 'groove')
      for (const part of parts.known(item.entering)) grooved.add(part);
    if (item.$type === 'CantLine' && item.first !== undefined)
      for (const part of parts.known(item.parts)) canted.set(part, item.first);
    if (item.$type !== 'NotchLine') continue;
    const sides = [item.first, item.second].filter((side) => side !== undefined);
    for (const part of parts.known(item.parts)) {
      const from = notched.get(part) ?? new Map<Side, number>();
      notched.set(part, from);
      for (const side of sides) from.set(side, (from.get(side) ?? 0) + 1);
    }
  }
  return { grooved, notched, canted };
}

/** The one default of a kind that a cabinet has. */
function only<T extends CabinetItem>(
  cabinet: Cabinet,
  type: T['$type'],
  what: string,
  { places, report }: CabinetReading,
): T | undefined {
  const [first, ...others] = cabinet.items.filter((item): item is T => item.$type === type);
  for (const again of others) {
    report(
      writtenTwice({
        source: places.of(again),
        message: say`${what} is written twice for this cabinet`,
        cure: say`Take one of the two out, or write it in the braces of the joints it is meant for.`,
        related: first ? [{ message: say`first here`, source: places.of(first) }] : [],
      }),
    );
  }
  return first;
}
