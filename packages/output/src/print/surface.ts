import { axisOf, type FittedPart, isFace, type Side } from '@dryfit/engine';

type Standing = Pick<FittedPart, 'attitude' | 'grain'>;

/** What a side is to the bench: one of the two large faces, an end (across the grain) or an edge (along it). */
export function surfaceWord(part: Standing, side: Side): 'face' | 'edge' | 'end' {
  if (isFace(side, part.attitude)) return 'face';
  return axisOf(side) === part.grain ? 'end' : 'edge';
}

/** A side in words: "right face", "rear edge", "bottom end". */
export function surfaceName(part: Standing, side: Side): string {
  return `${side} ${surfaceWord(part, side)}`;
}
