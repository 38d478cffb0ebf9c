import { axisOf, axisOfDimension, isFace, type Side } from '../spec/sides.js';
import type { CantStatement, PartId, PartSpec, Spec, Written } from '../spec/spec.js';

/** The cant of a part: the first written, since a part has one. */
export function cantOf(spec: Spec, part: PartId): CantStatement | undefined {
  for (const statement of spec.statements)
    if (statement.kind === 'cant' && statement.parts.includes(part)) return statement;
  return undefined;
}

/** How much of the part a cant takes, measured inward from one of the two sides of its corner. */
export const legFrom = (cant: CantStatement, side: Side): Written | undefined =>
  cant.legs.find(({ dimension }) => axisOfDimension(dimension) === axisOf(side))?.length;

/** Whether the two sides of the corner are edges of the part that meet; a cant goes through the thickness. */
export const cutsOutline = ({ corner: [a, b] }: CantStatement, part: PartSpec): boolean =>
  axisOf(a) !== axisOf(b) && !isFace(a, part.attitude) && !isFace(b, part.attitude);
