import {
  type Axis,
  axisOf,
  type Fact,
  opposite,
  type PartId,
  type Side,
  say,
  type Toward,
  thicknessAxis,
  type Written,
} from '@dryfit/engine';
import { againstSameWay } from '../checks/against-same-way.js';
import { flushSidesDiffer } from '../checks/flush-sides-differ.js';
import { offsetCount } from '../checks/offset-count.js';
import { writtenTwice } from '../checks/written-twice.js';
import { wrongSide } from '../checks/wrong-side.js';
import type { CentredFact, FlushFact, OpeningsFact, SideFact } from '../generated/ast.js';
import { readWritten } from './measure.js';
import { liesAlong, readPlane } from './plane.js';
import type { StatementReading } from './reading.js';
import { wordsOfPlane } from './words.js';

const TOWARD: Readonly<Record<string, readonly [Toward, Axis, string]>> = {
  above: ['above', 'z', 'up'],
  below: ['below', 'z', 'down'],
  infrontof: ['in front of', 'y', 'to the front'],
  behind: ['behind', 'y', 'to the rear'],
  leftof: ['left of', 'x', 'to the left'],
  rightof: ['right of', 'x', 'to the right'],
};

/** Where a part stands; undefined where the fact cannot be read, which has been reported. */
export function readSideFact(node: SideFact, parts: readonly PartId[], reading: StatementReading): Fact | undefined {
  const { side } = node;
  if (side === undefined || node.at === undefined) return undefined;
  const source = reading.places.of(node);
  const at = readPlane(node.at, reading, node.relation === 'against' ? undefined : side);
  if (node.relation === undefined && node.toward === undefined) return undefined;
  if (node.relation === 'flush') {
    if (!at || !sameSide(side, at.plane, node, reading)) return undefined;
    return { kind: 'flush with', side, plane: at, source };
  }
  if (node.relation === 'against') {
    if (!at || !facing(side, at.plane, node, reading)) return undefined;
    return { kind: 'against', side, plane: at, source };
  }
  const by = node.by.map((measure) => readWritten(measure, reading));
  if (!at || !liesAlong(at, axisOf(side), `the ${side} of a part`, reading)) return undefined;
  if (by.length === 0 || by.some((length) => length === undefined)) return undefined;
  const lengths = by as readonly Written[];
  const [first] = lengths;
  if (node.relation !== undefined && first) {
    return { kind: node.relation === 'set' ? 'set back' : 'proud', side, by: first, plane: at, source };
  }
  const [toward, axis, way] = TOWARD[node.toward ?? ''] ?? [];
  if (toward === undefined) return undefined;
  if (axis !== axisOf(side)) {
    const message = say`the ${side} of a part cannot be moved ${way ?? ''}: it lies that way itself`;
    const cure = say`Write the side that is meant, or the direction across ${side}.`;
    reading.report(wrongSide({ source: reading.places.property(node, 'side'), message, cure }));
    return undefined;
  }
  if (lengths.length !== 1 && lengths.length !== parts.length) {
    const first = node.by[0];
    const last = node.by.at(-1);
    const at = first && last ? { ...reading.places.of(first), end: reading.places.of(last).end } : source;
    const message = say`${lengths.length} offsets are written for ${parts.length} ${parts.length === 1 ? 'part' : 'parts'}`;
    reading.report(
      offsetCount({
        source: at,
        message,
        cure: say`Write one for all, or ${parts.length} in the order of their numbers.`,
        data: { wanted: String(parts.length) },
      }),
    );
    return undefined;
  }
  return { kind: 'at', side, by: lengths, toward, plane: at, source };
}

export function readFlush(node: FlushFact, reading: StatementReading): Fact | undefined {
  const sides: Side[] = [];
  for (const [index, side] of node.sides.entries()) {
    if (!sides.includes(side)) {
      sides.push(side);
      continue;
    }
    const source = reading.places.property(node, 'sides', index);
    reading.report(writtenTwice({ source, message: say`${side} is named twice`, cure: say`Take one of the two out.` }));
  }
  return sides.length > 0 ? { kind: 'flush', sides, source: reading.places.of(node) } : undefined;
}

export function readCentred(node: CentredFact, reading: StatementReading): Fact | undefined {
  const low = reading.parts.one(node.low);
  const high = reading.parts.one(node.high);
  if (low === undefined || high === undefined) return undefined;
  const [a, b] = [low, high].map((part) => reading.parts.attitude(part));
  if (a === undefined || b === undefined) return undefined;
  const source = reading.places.of(node);
  if (thicknessAxis(a) === thicknessAxis(b)) return { kind: 'centred', low, high, source };
  const message = say`${low} is ${article(a)} part and ${high} ${article(b)} part, so there is no middle between them`;
  reading.report(wrongSide({ source, message, cure: say`Name two parts that stand the same way.` }));
  return undefined;
}

export function readOpenings(node: OpeningsFact, reading: StatementReading): Fact | undefined {
  const low = readPlane(node.low, reading);
  const high = readPlane(node.high, reading);
  const step = node.step && readWritten(node.step, reading);
  if (!low || !high || (node.step && !step)) return undefined;
  if (!liesAlong(high, axisOf(low.plane), `an opening from the ${low.plane} of ${low.part}`, reading)) return undefined;
  return { kind: 'openings', step, low, high, source: reading.places.of(node) };
}

function sameSide(side: Side, other: Side, node: SideFact, reading: StatementReading): boolean {
  if (side === other) return true;
  const touching = opposite(side) === other;
  const message = say`${side} and ${other} are different sides; flush brings the same side of two parts into one plane`;
  const cure = touching ? say`Write ${side} against …, if they touch.` : say`Name the same side of both.`;
  reading.report(flushSidesDiffer({ source: reading.places.of(node.at), message, cure }));
  return false;
}

function facing(side: Side, other: Side, node: SideFact, reading: StatementReading): boolean {
  if (opposite(side) === other) return true;
  const source = reading.places.of(node.at);
  const message =
    side === other
      ? say`${wordsOfPlane(node.at)} looks to the ${side} too, and two sides that look the same way cannot touch`
      : say`${side} and ${wordsOfPlane(node.at)} lie across each other, so they cannot touch`;
  const cure =
    side === other
      ? say`Write ${side} flush with …, or name the ${opposite(side)} of the other part.`
      : say`Name the ${opposite(side)} of the other part.`;
  reading.report(againstSameWay({ source, message, cure }));
  return false;
}

const article = (attitude: string): string => `${attitude === 'upright' ? 'an' : 'a'} ${attitude}`;
