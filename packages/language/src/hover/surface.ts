import { axisOf, type FittedPart, type Half, isFace, type Side } from '@dryfit/engine';

type Standing = Pick<FittedPart, 'attitude' | 'grain'>;

/** A side in the bench's words: "right face", "rear edge", and "bottom end" where it lies across the grain. */
export function surfaceName(part: Standing | undefined, side: Side): string {
  if (part === undefined) return side;
  if (isFace(side, part.attitude)) return `${side} face`;
  return `${side} ${axisOf(side) === part.grain ? 'end' : 'edge'}`;
}

/** What slots are measured from across a joint: "its bottom face", "its bottom end", "the toe at its top face". */
export function referenceName({ from }: Pick<Half, 'from'>, part: Standing | undefined): string {
  const its = `its ${surfaceName(part, from.side)}`;
  return from.kind === 'toe' || from.kind === 'heel' ? `the ${from.kind} at ${its}` : its;
}
