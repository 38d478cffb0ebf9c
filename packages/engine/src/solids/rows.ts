import type { Cut, FittedJoint, FittedPart } from '../fit/fit.js';
import { isOpening } from '../geometry/cut-solid.js';
import type { Bounds } from '../geometry/solid.js';
import type { Rational } from '../number/rational.js';
import { type CutBody, cutBodies } from './cuts.js';
import { pairsWithin } from './sweep.js';

/**
 * Whether any row of a part's cuts comes nearer than `asked` to another, mm, by the boxes around the rows; mostly none
 * does, and no cut need be looked at. The slots of a row lie on one line, so that its ends tell where it is.
 */
export function rowsComeNear(
  part: FittedPart,
  thin: Rational | undefined,
  jointOf: (id: string) => FittedJoint | undefined,
  asked: number,
): boolean {
  const rows = rowsOf(part.cuts);
  if (rows.length < 2) return false;
  const placed = rows.flatMap((cuts) => {
    const ends = cuts.length > 2 ? [cuts[0], cuts.at(-1)].filter((cut) => cut !== undefined) : cuts;
    const bounds = around(cutBodies(part, thin, jointOf, ends));
    return bounds ? [{ bounds }] : [];
  });
  return pairsWithin(placed, asked).next().done !== true;
}

/** The slots that a joint has in the part, in their order along the run; every other cut by itself. */
function rowsOf(cuts: readonly Cut[]): readonly (readonly Cut[])[] {
  const rows: Cut[][] = [];
  let joint: string | undefined;
  for (const cut of cuts) {
    const opening = isOpening(cut);
    if (opening && cut.joint === joint) rows.at(-1)?.push(cut);
    else rows.push([cut]);
    joint = opening ? cut.joint : undefined;
  }
  return rows;
}

function around(bodies: readonly CutBody[]): Bounds | undefined {
  const [first, ...others] = bodies;
  if (!first) return undefined;
  let { lo, hi } = first.bounds;
  for (const { bounds } of others) {
    lo = [Math.min(lo[0], bounds.lo[0]), Math.min(lo[1], bounds.lo[1]), Math.min(lo[2], bounds.lo[2])];
    hi = [Math.max(hi[0], bounds.hi[0]), Math.max(hi[1], bounds.hi[1]), Math.max(hi[2], bounds.hi[2])];
  }
  return { lo, hi };
}
