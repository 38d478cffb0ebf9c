import type { FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { mayMirror, pieceSignature } from '../parts/same.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike } from './support/alike.js';
import { offWithinPlay, type Piece, pieceOf, TURNS } from './support/hands.js';
import { partNames, partsInOrder } from './support/names.js';

/** Two parts are a left and a right that differ by so little that the wrong one still goes in. */
export const handed: Check = {
  code: 'handed',
  severity: 'warning',
  *run(context) {
    for (const like of alike(partsInOrder(context), outline)) {
      const pieces = alike(like, (part) => [part.same]);
      for (const [i, first] of pieces.entries()) {
        for (const second of pieces.slice(i + 1)) {
          const found = confused(context, first, second);
          if (found) yield found;
        }
      }
    }
  },
};

/** What two pieces have in common that could be taken for one another. */
const outline = ({ material, attitude, extent, cuts, bands }: FittedPart): readonly unknown[] => [
  material,
  attitude,
  extent.x,
  extent.y,
  extent.z,
  cuts.length,
  bands.length,
];

function confused(
  context: CheckContext,
  first: readonly [FittedPart, ...FittedPart[]],
  second: readonly [FittedPart, ...FittedPart[]],
): Found | undefined {
  if (!mayMirror(first[0], second[0])) return undefined;
  const [a, b] = [pieceOf(first[0]), pieceOf(second[0])];
  const way = a && b && wayIn(context, a, b);
  if (!way || pieceSignature(first[0], true) !== pieceSignature(second[0])) return undefined;
  const names = (parts: readonly FittedPart[]) =>
    partNames(
      context,
      parts.map(({ id }) => id),
    );
  return {
    message: say`${names(first)} and ${names(second)} are a left and a right, yet ${TURNS[way.turn]?.words ?? ''} the one goes in where the other should: its slots are no more than ${way.off} off, and the connectors have more play than that`,
    cure: say`Move a line so that the wrong hand does not go in, or make the two one piece, or mark them when they are cut and say so here: allow handed "…".`,
    source: second[0].source,
    related: [{ message: say`${first[0].id}`, source: first[0].source }],
    about: { parts: [...first, ...second].map(({ id }) => id) },
    data: { off: way.off.toString() },
  };
}

/** A way to turn the one piece so that it goes in for the other, a little off. */
function wayIn(context: CheckContext, a: Piece, b: Piece) {
  for (const turn of TURNS.keys()) {
    const off = offWithinPlay(a, turn, b, (cut) => context.joint(cut.joint)?.connector);
    if (off?.gt(context.spec.shop.limits.step)) return { turn, off };
  }
  return undefined;
}
