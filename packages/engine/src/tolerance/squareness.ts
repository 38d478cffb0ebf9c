import { say } from '../fit/text.js';
import type { PartId } from '../spec/spec.js';
import type { AsMade } from './as-made.js';
import { type Contributor, contributor } from './contributor.js';
import type { Curve } from './curve.js';
import type { Plane } from './path.js';
import { reader } from './reader.js';
import type { Stack } from './stack.js';

/** Four sides of a case as they come out, mm; `lean` is how far the top stands to the right of the base. */
export interface Leaning {
  readonly top: number;
  readonly base: number;
  readonly left: number;
  readonly right: number;
  readonly lean: number;
}

/**
 * The diagonal that rises to the right less the one that rises to the left, mm: corners at (0, 0), (base, 0),
 * (lean, left) and (lean + top, right). For a case of four like sides, √((W + s)² + H²) − √((W − s)² + H²).
 */
export const diagonalDifference = ({ top, base, left, right, lean }: Leaning): number =>
  Math.hypot(lean + top, right) - Math.hypot(base - lean, left);

/** The case as seen from the front: two uprights, and the lowest and the highest level part that join both. */
export interface Squareness {
  readonly parts: { readonly left: PartId; readonly right: PartId; readonly base: PartId; readonly top: PartId };
  readonly width: number;
  readonly height: number;
  /** {@link diagonalDifference}. */
  readonly difference: Curve;
}

export function squarenessOf(made: AsMade): Squareness | undefined {
  const parts = ringOf(made);
  if (!parts) return undefined;
  const { left, right, base, top } = parts;
  const across = (level: PartId) => span(made, { part: left, side: 'left' }, { part: right, side: 'right' }, level);
  const up = (upright: PartId) => span(made, { part: base, side: 'bottom' }, { part: top, side: 'top' }, upright);
  const [w1, w2, h1, h2] = [across(top), across(base), up(left), up(right)];
  if (!w1 || !w2 || !h1 || !h2) return undefined;
  const lean = leanOf(made, h1.length);
  const stacks = [w1, w2, h1, h2].map(({ off }) => off);
  const read = reader([
    ...new Set([...stacks.flatMap(({ terms }) => terms.map(({ of }) => of)), ...(lean ? [lean.of] : [])]),
  ]);
  return {
    parts,
    width: w2.length,
    height: h1.length,
    difference: {
      of: read.of,
      at: (off) =>
        diagonalDifference({
          top: w1.length + read.sum(w1.off, off),
          base: w2.length + read.sum(w2.off, off),
          left: h1.length + read.sum(h1.off, off),
          right: h2.length + read.sum(h2.off, off),
          lean: lean ? lean.factor * read.one(lean.of, off) : 0,
        }),
    },
  };
}

/** A case leans as its corners are out of square: by the same angle all the way up. */
function leanOf(made: AsMade, height: number): { readonly of: Contributor; readonly factor: number } | undefined {
  const { square } = made.tolerances;
  const tolerance = square && { plus: square.by, minus: square.by };
  const naming = { id: () => 'lean', words: () => say`corners out of square`, source: square?.source };
  const of = contributor('square', tolerance, naming);
  return of && square && square.over.sign() > 0 ? { of, factor: height / square.over.toNumber() } : undefined;
}

function span(
  made: AsMade,
  from: Plane,
  to: Plane,
  through: PartId,
): { readonly length: number; readonly off: Stack } | undefined {
  const path = made.held.path(from, to, (part) => [from.part, to.part, through].includes(part));
  const [low, high] = [made.solved.at(from.part, from.side), made.solved.at(to.part, to.side)];
  return path && low && high && { length: high.sub(low).toNumber(), off: path.off };
}

function ringOf(made: AsMade): Squareness['parts'] | undefined {
  const boxes = made.boxed();
  const uprights = boxes.filter(({ attitude }) => attitude === 'upright');
  const left = [...uprights].sort((a, b) => a.box.lo.x.compare(b.box.lo.x))[0];
  const right = [...uprights].sort((a, b) => b.box.hi.x.compare(a.box.hi.x))[0];
  if (!left || !right || left === right) return undefined;
  const joined = new Set(
    made.fit.joints.flatMap(({ entering, host }) => [`${entering}\n${host}`, `${host}\n${entering}`]),
  );
  const levels = boxes
    .filter(
      ({ attitude, id }) => attitude === 'level' && [left, right].every((side) => joined.has(`${id}\n${side.id}`)),
    )
    .sort((a, b) => a.box.lo.z.compare(b.box.lo.z));
  const [base] = levels;
  const top = levels.at(-1);
  if (!base || !top || base === top) return undefined;
  return { left: left.id, right: right.id, base: base.id, top: top.id };
}
