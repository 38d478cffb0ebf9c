import type { FittedCant, FittedPart } from '../fit/fit.js';
import { placeOut } from '../geometry/turn.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import { isHigh, type Side } from '../spec/sides.js';
import type { PartSpec } from '../spec/spec.js';
import { cantOf, cutsOutline, legFrom } from './cant.js';

/** The corner a cant takes off a part, where it is one that can be cut. */
export function fittedCant(solved: Solved, part: PartSpec): FittedCant | undefined {
  const cant = cantOf(solved.spec, part.id);
  if (!cant || part.on || !cutsOutline(cant, part)) return undefined;
  const [a, b] = cant.corner;
  const [first, second] = [legFrom(cant, a)?.value, legFrom(cant, b)?.value];
  if (!first || !second || first.sign() <= 0 || second.sign() <= 0) return undefined;
  return { corner: [a, b], legs: [first, second], source: cant.source };
}

/** Places in a cabinet are told to a millionth of a mm where they are roots. */
const MILLIONTHS = 1_000_000;

/** What a turned part reaches past a plane by no more than this lies in it, mm: so exactly its width is known. */
export const FLUSH = Rational.of(1, 1000);

/** How far a turned part reaches in the cabinet toward a side, mm, to the nearest millionth. */
export function reachOf(part: FittedPart, side: Side): Rational | undefined {
  const { box, turn } = part;
  if (!box || !turn) return undefined;
  const axis = side === 'left' || side === 'right' ? 0 : 1;
  const corners = [box.lo.x, box.hi.x].flatMap((x) =>
    [box.lo.y, box.hi.y].map((y) => placeOut(turn, [x.toNumber(), y.toNumber(), 0])[axis]),
  );
  const farthest = isHigh(side) ? Math.max(...corners) : Math.min(...corners);
  return Rational.of(Math.round(farthest * MILLIONTHS), MILLIONTHS);
}
