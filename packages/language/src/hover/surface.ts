import { axisOf, type FittedPart, type Half, isFace, type Side } from '@dryfit/engine';

type Standing = Pick<FittedPart, 'attitude' | 'grain'>;

/** A side in the bench's words: "right face", "rear edge", and "bottom end" where it lies across the grain. */
export function surfaceName(part: Standing | undefined, side: Side): string {
  if (part === undefined) return side;
  if (isFace(side, part.attitude)) return `${side} face`;
  return `${side} ${axisOf(side) === part.grain ? 'end' : 'edge'}`;
}

/** What slots are measured from across a joint: "its bottom face", "its bottom end", "the toe at its top face". */
export function referenceName(half: Pick<Half, 'from' | 'turn'>, part: Standing | undefined): string {
  const { from } = half;
  const its = `its ${placeOn(half, part, from.side)}`;
  return from.kind === 'toe' || from.kind === 'heel' ? `the ${from.kind} at ${its}` : its;
}

/** Where a half is milled; one in the edge that a cant leaves is in the cant. */
export const surfaceOn = (half: Pick<Half, 'turn' | 'role' | 'surface'>, part: Standing | undefined): string =>
  half.turn && half.role === 'edge' ? 'cant' : surfaceName(part, half.surface);

/** A side that a half is measured from: along a cant the cant, or an end of it as seen from the front. */
export function placeOn({ turn }: Pick<Half, 'turn'>, part: Standing | undefined, side: Side): string {
  if (!turn || axisOf(side) === 'z') return surfaceName(part, side);
  return axisOf(side) === 'x' ? `cant, at the ${side} end of it` : 'cant';
}
