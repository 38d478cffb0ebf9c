import { Rational } from '../number/rational.js';
import { axisOf, isHigh, outward, type Side } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import { faceOnCant } from '../turned/frame.js';
import { FLUSH, reachOf } from '../turned/parts.js';
import { acrossCant, laidOn } from '../turned/span.js';
import type { AsMade, Boxed } from './as-made.js';
import type { Plane } from './path.js';
import { less, NOTHING_OFF, type Stack, stacked } from './stack.js';
import { longerBy } from './turned-as-made.js';

/** A corner of a turned part that reaches further out than any other part. */
export interface Reach {
  readonly part: PartId;
  /** Where it lies along the axis, mm; a root, to the nearest millionth. */
  readonly at: Rational;
  /** The side of the level part that it is told from. */
  readonly base: Plane;
  /** What it depends on, and how far along the axis it comes from `base` then, beyond what is planned. */
  readonly stacks: readonly Stack[];
  readonly moved: (...sums: number[]) => number;
}

/** The turned part that reaches furthest toward a side, where it is further than anything that stands square. */
export function furthestReach(made: AsMade, side: Side, square: Rational): Reach | undefined {
  const out = Rational.of(outward(side));
  const reaches = made.boxed().flatMap((part) => {
    const at = part.turn && reachOf(part, side);
    return at?.sub(square).mul(out).gt(FLUSH) ? [{ part, at }] : [];
  });
  const [first] = reaches.sort((a, b) => b.at.sub(a.at).mul(out).sign());
  return first && reachAsMade(made, first.part, side, first.at);
}

/**
 * The corner in plan: from the level part's own edge to the left end of the cant, along the cant as it is cut, and off
 * it by as much as the part stands out of it.
 */
function reachAsMade(made: AsMade, part: Boxed, side: Side, at: Rational): Reach | undefined {
  const spec = made.turned.part(part.id);
  const level = spec?.on?.part;
  const frame = made.turned.frame(part.id);
  const across = spec && frame && acrossCant(made.solved, spec, frame.span);
  const [cant, corner] = level === undefined ? [] : [made.turned.cant(level), made.part(level)?.cant?.corner];
  const edge = corner?.find((one) => axisOf(one) === axisOf(side));
  if (level === undefined || !frame || !cant || !across || edge === undefined) return undefined;
  const { left, outer, width } = frame.span;
  const axis = axisOf(side) === 'x' ? 0 : 1;
  const inward = left.on === edge ? 0 : -outward(edge);
  const { byRight, ...ends } = placedOnCant(made, part, level, faceOnCant(frame.span, laidOn(made.spec, part.id)));
  const depth = outer === 'front' ? 'lo' : 'hi';
  const reach = (legX = 0, legY = 0, first = 0, second = 0, lo = 0, hi = 0): number => {
    const [offX, offY] = [Math.sign(cant.x) * legX, Math.sign(cant.y) * legY];
    const long = Math.hypot(cant.x + offX, cant.y + offY);
    const [x, y] = [(cant.x + offX) / long, (cant.y + offY) / long];
    const start = byRight ? longerBy(cant, offX, offY) : 0;
    const outside = across[depth].toNumber() + (depth === 'lo' ? lo : hi);
    const ofEnd = (along: number) => along * (axis === 0 ? x : y) + outside * (axis === 0 ? -y : x);
    const both = [ofEnd(start + first), ofEnd(start + width.value + second)];
    return inward * (axis === 0 ? legX : legY) + (isHigh(side) ? Math.max(...both) : Math.min(...both));
  };
  const planned = reach();
  const moved = (...sums: number[]) => reach(...sums) - planned;
  const { left: first, right: second, lo, hi } = ends;
  return { part: part.id, at, base: { part: level, side: edge }, stacks: [...cant.legs, first, second, lo, hi], moved };
}

/**
 * How far the ends of a turned part come beyond where the cant has them, and its faces beyond their places, along its
 * own axes: from the joint by which the level part holds it. `byRight`: told from the right end of the cant.
 */
function placedOnCant(made: AsMade, { id }: Boxed, level: PartId, face: Side) {
  const links = made.joints
    .filter(({ entering, host, meeting }) => entering === id && host === level && meeting !== 'mitre')
    .flatMap((joint) => made.linksOf(joint));
  const held = (axis: 'x' | 'y') => links.find(({ aSide }) => axisOf(aSide) === axis);
  const end = held('x');
  const along = end?.off() ?? NOTHING_OFF;
  const off = held('y')?.off() ?? NOTHING_OFF;
  const [width, thickness] = [made.size(id, 'x'), made.size(id, 'y')];
  const byRight = end?.aSide === 'right';
  return {
    byRight,
    left: byRight ? less(along, width) : along,
    right: byRight ? along : stacked(along, width),
    lo: face === 'front' ? off : less(off, thickness),
    hi: face === 'front' ? stacked(off, thickness) : off,
  };
}
