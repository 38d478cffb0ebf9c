import { say } from '../fit/text.js';
import type { Solved } from '../sizes/solved.js';
import { axisOf, axisOfDimension, type Side } from '../spec/sides.js';
import type { Fact, JointStatement, NotchStatement, PartSpec, PlaneRef, Statement } from '../spec/spec.js';
import { cantUnder } from './ends.js';
import type { Refused } from './refused.js';

/**
 * Facts about the sides of a turned part that lie across no axis. Where it lies follows from the cant, and only its
 * heights are given. `flush` with the cant it stands on, and with its ends, says what holds anyway.
 */
export function* refusedFacts(solved: Solved, turned: ReadonlyMap<string, PartSpec>): Generator<Refused> {
  for (const statement of solved.spec.statements) {
    if (statement.kind === 'notch') yield* notched(statement, turned);
    for (const { part, side, source } of sidesIn(solved, statement, turned)) {
      if (axisOf(side) === 'z') continue;
      yield {
        message: say`${part}.${side} lies across neither width nor depth: where ${part} stands follows from the cant it stands on`,
        cure: say`Take this out, and change the cant if ${part} is to stand elsewhere; only its bottom, its top and its height can be written.`,
        source,
        part,
        statement: statement.id,
      };
    }
  }
}

function* notched(statement: NotchStatement, turned: ReadonlyMap<string, PartSpec>): Generator<Refused> {
  for (const part of statement.parts) {
    if (!turned.has(part)) continue;
    yield {
      message: say`${part} is turned, and a notch in a turned part is not worked out`,
      cure: say`Take ${part} out of the notch.`,
      source: statement.source,
      part,
      statement: statement.id,
    };
  }
}

interface Named {
  readonly part: string;
  readonly side: Side;
  readonly source: Refused['source'];
}

/** Every side of a turned part that a statement speaks of. */
function* sidesIn(solved: Solved, statement: Statement, turned: ReadonlyMap<string, PartSpec>): Generator<Named> {
  const of = (part: string, side: Side, source: Named['source']): Named[] =>
    turned.has(part) ? [{ part, side, source }] : [];
  const plane = (ref: PlaneRef): Named[] => (ref.of === 'part' ? of(ref.part, ref.plane, ref.source) : []);
  if (statement.kind === 'dimension') {
    const { form, dimension, source } = statement;
    const side = ({ x: 'left', y: 'front', z: 'bottom' } as const)[axisOfDimension(dimension)];
    if (form.kind === 'from') yield* [...plane(form.from), ...plane(form.to)];
    else for (const part of form.kind === 'of' ? form.parts : [form.low, form.high]) yield* of(part, side, source);
  }
  if (statement.kind === 'placing') yield* ofFact(statement.fact, statement.parts, of, plane);
  if (statement.kind !== 'joint') return;
  for (const fact of statement.facts) {
    const holds = fact.kind === 'flush' ? holding(solved, statement, turned) : () => false;
    for (const named of ofFact(fact, statement.entering, of, plane)) if (!holds(named.part, named.side)) yield named;
  }
}

/** Sides of a butted part that are flush with the cant and its ends as it stands. */
function holding(solved: Solved, joint: JointStatement, turned: ReadonlyMap<string, PartSpec>) {
  return (part: string, side: Side): boolean => {
    const spec = turned.get(part);
    const cant = spec && cantUnder(solved.spec, spec);
    const outer = cant?.corner.includes('rear') ? 'rear' : 'front';
    return joint.verb === 'butt' && (axisOf(side) === 'x' || side === outer);
  };
}

function* ofFact(
  fact: Fact,
  parts: readonly string[],
  of: (part: string, side: Side, source: Named['source']) => Named[],
  plane: (ref: PlaneRef) => Named[],
): Generator<Named> {
  const own = (side: Side): Named[] => parts.flatMap((part) => of(part, side, fact.source));
  switch (fact.kind) {
    case 'flush':
      for (const side of fact.sides) yield* own(side);
      return;
    case 'centred':
      // Between two level parts it is the height that is centred; between others it has no middle.
      yield* [fact.low, fact.high].flatMap((part) => of(part, 'front', fact.source));
      return;
    case 'openings':
      yield* [...plane(fact.low), ...plane(fact.high)];
      if (axisOf(fact.low.plane) !== 'z') yield* own(fact.low.plane);
      return;
    default:
      yield* own(fact.side);
      yield* plane(fact.plane);
  }
}
