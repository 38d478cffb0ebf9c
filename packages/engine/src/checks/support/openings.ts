import { Rational } from '../../number/rational.js';
import { type Axis, axisOf, axisOfDimension, highSide, lowSide } from '../../spec/sides.js';
import type { DimensionStatement, Fact, PartId, Statement } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';

/** Evenly spaced parts with less room between two planes than they and their openings take. */
export interface Crowded {
  readonly statement: Statement;
  readonly fact: Extract<Fact, { kind: 'openings' }>;
  readonly parts: readonly PartId[];
  readonly axis: Axis;
  /** Between the two planes, taken by the parts, and left for each opening, mm. */
  readonly space: Rational;
  readonly taken: Rational;
  readonly opening: Rational;
  /** What the openings are rounded to, mm. */
  readonly step?: Rational | undefined;
}

const known = new WeakMap<CheckContext['solved'], readonly Crowded[]>();

/** Every even spacing that does not come out. */
export function crowded(context: CheckContext): readonly Crowded[] {
  const found =
    known.get(context.solved) ?? context.spec.statements.flatMap((statement) => spacings(context, statement));
  known.set(context.solved, found);
  return found;
}

function spacings(context: CheckContext, statement: Statement): readonly Crowded[] {
  if (statement.kind !== 'joint' && statement.kind !== 'placing') return [];
  const facts = statement.kind === 'joint' ? statement.facts : [statement.fact];
  const parts = statement.kind === 'joint' ? statement.entering : statement.parts;
  return facts.flatMap((fact) => {
    if (fact.kind !== 'openings') return [];
    return spacing(context, statement, fact, parts) ?? [];
  });
}

function spacing(
  context: CheckContext,
  statement: Statement,
  fact: Crowded['fact'],
  parts: readonly PartId[],
): Crowded | undefined {
  const { planes } = context.solved.system;
  const axis = axisOf(fact.low.plane);
  const difference = (high: number | undefined, low: number | undefined): Rational | undefined => {
    if (high === undefined || low === undefined) return undefined;
    const { value, status } = context.solved.solution.difference(high, low);
    return status === 'determined' ? value : undefined;
  };
  const space = difference(planes.of(fact.high), planes.of(fact.low));
  const extents = parts.flatMap(
    (part) => difference(planes.side(part, highSide(axis)), planes.side(part, lowSide(axis))) ?? [],
  );
  if (!space || extents.length < parts.length) return undefined;
  const taken = Rational.sum(extents);
  const opening = space.sub(taken).div(Rational.of(parts.length + 1));
  const step = fact.step && fact.step.value.sign() > 0 ? fact.step.value : undefined;
  if (step ? opening.ge(step) : opening.sign() > 0) return undefined;
  return { statement, fact, parts, axis, space, taken, opening, step };
}

/** A dimension line between two parts that leaves nothing between them. */
export interface Closed {
  readonly statement: DimensionStatement;
  readonly low: PartId;
  readonly high: PartId;
  readonly axis: Axis;
}

/** Every clear opening that is written as nothing or less. */
export const closed = ({ spec }: CheckContext): readonly Closed[] =>
  spec.statements.flatMap((statement) => {
    if (statement.kind !== 'dimension' || statement.form.kind !== 'between') return [];
    if (statement.length.value.sign() > 0) return [];
    const { low, high } = statement.form;
    return [{ statement, low, high, axis: axisOfDimension(statement.dimension) }];
  });

/** Whether two parts run into each other because an opening between them is nothing or less. */
export function pressed(context: CheckContext, one: PartId, two: PartId): boolean {
  const both = (parts: readonly PartId[]): boolean => parts.includes(one) && parts.includes(two);
  return (
    closed(context).some(({ low, high }) => both([low, high])) ||
    crowded(context).some(({ parts, fact }) => both([...parts, fact.low.part, fact.high.part]))
  );
}

/** Whether a part has no extent because the two it stands between leave nothing between them. */
export const squeezed = (context: CheckContext, part: PartId, axis: Axis): boolean =>
  closed(context)
    .filter((opening) => opening.axis === axis)
    .some(({ low, high }) =>
      [low, high].every((host) =>
        context.fit.joints.some((joint) => joint.entering === part && joint.host === host && joint.axis === axis),
      ),
    );
