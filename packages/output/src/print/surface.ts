import { axisOf, type FittedPart, type Half, isFace, type Side } from '@dryfit/engine';

type Standing = Pick<FittedPart, 'attitude' | 'grain'>;

/** What a side is to the bench: one of the two large faces, an end (across the grain) or an edge (along it). */
function surfaceWord(part: Standing, side: Side): 'face' | 'edge' | 'end' {
  if (isFace(side, part.attitude)) return 'face';
  return axisOf(side) === part.grain ? 'end' : 'edge';
}

/** A side in words: "right face", "rear edge", "bottom end". */
export function surfaceName(part: Standing, side: Side): string {
  return `${side} ${surfaceWord(part, side)}`;
}

type Milled = Pick<Half, 'turn' | 'role' | 'surface'>;

/** Where a half is milled: one in the edge that a cant leaves is in the cant. */
export const surfaceOn = (part: Standing, half: Milled): string =>
  half.turn && half.role === 'edge' ? 'cant' : surfaceName(part, half.surface);

/** A side that a half is measured from; along a cant it is the cant, or an end of it as seen from the front. */
export function placeOn(part: Standing, half: Milled, side: Side): string {
  if (!half.turn || axisOf(side) === 'z') return surfaceName(part, side);
  return axisOf(side) === 'x' ? `${side} end of the cant` : 'cant';
}

/** What goes against a fence; of a mitred end it is the toe, from which its lengths are told. */
export function datumWords(part: Standing & Pick<FittedPart, 'cuts'>, half: Milled, side: Side): string {
  const isMitred = !half.turn && part.cuts.some((cut) => cut.kind === 'bevel' && cut.side === side);
  return isMitred ? `toe of the ${placeOn(part, half, side)}` : placeOn(part, half, side);
}

/** The fence the datum goes to; the edge of a canted part that stands square to its cant is none. */
export const fenceWord = ({ turn, hand }: Pick<Half, 'turn' | 'hand'>): string => (turn ? 'mark out' : hand);
