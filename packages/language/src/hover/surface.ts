import { axisOf, type FittedPart, type Half, isFace, type Side } from '@dryfit/engine';

type Standing = Pick<FittedPart, 'attitude' | 'grain'>;

/** A side in the bench's words: "right face", "rear edge", and "bottom end" where it lies across the grain. */
export function surfaceName(part: Standing | undefined, side: Side): string {
  if (part === undefined) return side;
  if (isFace(side, part.attitude)) return `${side} face`;
  return `${side} ${axisOf(side) === part.grain ? 'end' : 'edge'}`;
}

/** What slots are measured from across a joint: "bottom face", "bottom end", "toe of the mitre". */
export function referenceName({ from }: Pick<Half, 'from'>, part: Standing | undefined): string {
  if (from.kind === 'toe' || from.kind === 'heel')
    return `${from.kind} of the mitre, at its ${surfaceName(part, from.side)}`;
  return surfaceName(part, from.side);
}
