import { axisOf, axisOfDimension, isFace, type Side } from '../spec/sides.js';
import type { CantStatement, PartId, PartSpec, Spec, Written } from '../spec/spec.js';

const known = new WeakMap<Spec, ReadonlyMap<PartId, CantStatement>>();

/** The cant of a part: the first written, since a part has one. Every contact asks, so it is looked for once. */
export function cantOf(spec: Spec, part: PartId): CantStatement | undefined {
  const cants = known.get(spec) ?? cantsOf(spec);
  known.set(spec, cants);
  return cants.get(part);
}

function cantsOf(spec: Spec): ReadonlyMap<PartId, CantStatement> {
  const cants = new Map<PartId, CantStatement>();
  for (const statement of spec.statements) {
    if (statement.kind !== 'cant') continue;
    for (const part of statement.parts) if (!cants.has(part)) cants.set(part, statement);
  }
  return cants;
}

/** How much of the part a cant takes, measured inward from one of the two sides of its corner. */
export const legFrom = (cant: CantStatement, side: Side): Written | undefined =>
  cant.legs.find(({ dimension }) => axisOfDimension(dimension) === axisOf(side))?.length;

/** Whether the two sides of the corner are edges of the part that meet; a cant goes through the thickness. */
export const cutsOutline = ({ corner: [a, b] }: CantStatement, part: PartSpec): boolean =>
  axisOf(a) !== axisOf(b) && !isFace(a, part.attitude) && !isFace(b, part.attitude);
