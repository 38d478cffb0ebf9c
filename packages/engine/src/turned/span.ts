import type { Turn } from '../fit/fit.js';
import { type Bounded, boundedOf, sqrtBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import { thicknessOf } from '../sizes/thickness.js';
import { axisOf, outward, type Side } from '../spec/sides.js';
import type { CantStatement, PartId, PartSpec, Spec } from '../spec/spec.js';
import { cantOf, cutsOutline, legFrom } from './cant.js';

/** A point in plan, mm, exact. */
export interface PlanPoint {
  readonly x: Rational;
  readonly y: Rational;
}

/** An end of a cant seen from above. */
export interface SpanEnd {
  readonly at: PlanPoint;
  /** The side of the canted part that this end lies on. */
  readonly on: Side;
  /** By how much the outline turns there, degrees: from that side to the cant. Within 1e-12 of the angle. */
  readonly turns: number;
}

/** From one end of a cant to the other, as a part that stands along it needs it. */
export interface Span {
  /** x from the left end to the right one, y toward the rear. */
  readonly turn: Turn;
  readonly left: SpanEnd;
  readonly right: SpanEnd;
  /** √(a² + b²) of the cant's legs, mm. */
  readonly width: Bounded;
  /** The same as sizes are written: exact where the root is, else to the nearest thousandth. */
  readonly rounded: Rational;
  /** The side of the part that looks out of the cabinet there. */
  readonly outer: Side;
}

/** Parts of a mm that a root is taken to. */
const THOUSANDTHS = 1000;

/** √q as a size: exact where q is the square of a fraction, else to the nearest thousandth of a mm. */
export function rootOf(q: Rational): { readonly width: Bounded; readonly rounded: Rational } {
  const root = sqrtBounded(q);
  const near = Rational.of(Math.round(root.value * THOUSANDTHS), THOUSANDTHS);
  const exact = exactRoot(q);
  return exact ? { width: boundedOf(exact), rounded: exact } : { width: root, rounded: near };
}

/** The root of a fraction that is a square; numerator and denominator are prime to each other, so both must be. */
function exactRoot(q: Rational): Rational | undefined {
  const [n, d] = [wholeRoot(q.numerator), wholeRoot(q.denominator)];
  return n === undefined || d === undefined ? undefined : Rational.of(n, d);
}

/** By Newton's steps from above. */
function wholeRoot(n: bigint): bigint | undefined {
  if (n < 2n) return n < 0n ? undefined : n;
  let root = 1n << BigInt(Math.ceil(n.toString(2).length / 2));
  for (let next = (root + n / root) / 2n; next < root; next = (root + n / root) / 2n) root = next;
  return root * root === n ? root : undefined;
}

/** The span of the cant of a level part; undefined while its planes are not fixed or its legs are no lengths. */
export function spanOf(solved: Solved, level: PartId): Span | undefined {
  const cant = cantOf(solved.spec, level);
  const part = solved.system.planes.part(level);
  const ends = cant && part && part.attitude === 'level' && cutsOutline(cant, part) ? endsOf(solved, level, cant) : [];
  const [left, right] = [...ends].sort((a, b) => a.at.x.compare(b.at.x));
  if (!cant || !left || !right) return undefined;
  const along = { x: right.at.x.sub(left.at.x), y: right.at.y.sub(left.at.y) };
  return {
    turn: { origin: left.at, along },
    left,
    right,
    ...rootOf(along.x.mul(along.x).add(along.y.mul(along.y))),
    outer: cant.corner.includes('rear') ? 'rear' : 'front',
  };
}

function endsOf(solved: Solved, level: PartId, cant: CantStatement): readonly SpanEnd[] {
  const ends = cant.corner.map((on, i): SpanEnd | undefined => {
    const other = cant.corner[1 - i] as Side;
    const [plane, corner] = [solved.at(level, on), solved.at(level, other)];
    const [away, along] = [legFrom(cant, on)?.value, legFrom(cant, other)?.value];
    if (!plane || !corner || !away || !along || away.sign() <= 0 || along.sign() <= 0) return undefined;
    // On the side itself, as far from the corner as the other leg takes.
    const there = corner.sub(along.mul(Rational.of(outward(other))));
    const at = axisOf(on) === 'x' ? { x: plane, y: there } : { x: there, y: plane };
    return { at, on, turns: (Math.atan2(away.toNumber(), along.toNumber()) * 180) / Math.PI };
  });
  return ends.every((end) => end !== undefined) ? (ends as SpanEnd[]) : [];
}

const samePoint = (a: PlanPoint, b: PlanPoint): boolean => a.x.equals(b.x) && a.y.equals(b.y);

/** Whether two cants run from the same point to the same point, seen from above. */
export const sameSpan = (a: Span, b: Span): boolean =>
  samePoint(a.left.at, b.left.at) && samePoint(a.right.at, b.right.at);

/** Whether a turned part is laid on its cant from outside: a butt joint to the cant says so. */
export const laidOn = (spec: Spec, part: PartId): boolean =>
  spec.statements.some(
    (s) =>
      s.kind === 'joint' && s.verb === 'butt' && s.entering.includes(part) && s.to.some((plane) => plane.of === 'cant'),
  );

/** From face to face of a turned part in its own frame, whose x is the line of the cant. */
export function acrossCant(
  solved: Solved,
  part: PartSpec,
  span: Span,
): { readonly lo: Rational; readonly hi: Rational } | undefined {
  if (!solved.spec.shop.materials.has(part.material)) return undefined;
  const thickness = thicknessOf(solved.spec, part.material).value;
  const behind = (span.outer === 'front') !== laidOn(solved.spec, part.id);
  return behind ? { lo: Rational.ZERO, hi: thickness } : { lo: thickness.neg(), hi: Rational.ZERO };
}
