import { type Contributor, halfOf, middleOf } from './contributor.js';
import { bySize, type Contribution } from './stack.js';

/**
 * A result that is no sum of its contributors: a mitre's opening, a diagonal. `at` gives it for how far each of `of`
 * is off, in their order.
 */
export interface Curve {
  readonly of: readonly Contributor[];
  readonly at: (off: readonly number[]) => number;
}

/** Figures of a curve. Each value is worked out in doubles; for a cabinet's sizes they are within 1e-9 of the truth. */
export interface CurveRange {
  /** Nothing off. */
  readonly planned: number;
  readonly least: number;
  readonly most: number;
  /** How the least and most were found: every corner tried, or the two that the slopes point to. */
  readonly found: 'every corner' | 'by the slopes';
}

/** More corners than 2 to this are not tried one by one. */
const MOST_CORNERS = 12;

/**
 * Least and most over the corners of the contributors' ranges. A result that only grows or only falls with each
 * contributor has its extremes there, and with up to twelve contributors every corner is tried; with more, the two
 * corners that the slopes point to.
 */
export function cornersOf(curve: Curve): CurveRange {
  const { of, at } = curve;
  const planned = at(of.map(() => 0));
  const ends = of.map(({ plus, minus }) => [-minus.toNumber(), plus.toNumber()] as const);
  if (of.length > MOST_CORNERS) {
    const up = slopesOf(curve).map((slope, i) => ends[i]?.[slope >= 0 ? 1 : 0] ?? 0);
    const down = slopesOf(curve).map((slope, i) => ends[i]?.[slope >= 0 ? 0 : 1] ?? 0);
    return { planned, least: at(down), most: at(up), found: 'by the slopes' };
  }
  let least = planned;
  let most = planned;
  const off = of.map(() => 0);
  for (let corner = 0; corner < 2 ** of.length; corner++) {
    for (let i = 0; i < of.length; i++) off[i] = ends[i]?.[(corner >> i) & 1] ?? 0;
    const value = at(off);
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return { planned, least, most, found: 'every corner' };
}

/** How fast the result changes with each contributor, per unit of it, where nothing is off (central differences). */
export function slopesOf({ of, at }: Curve): readonly number[] {
  const off = of.map(() => 0);
  return of.map((one, i) => {
    const step = Math.max(halfOf(one).toNumber() / 64, 1e-6);
    off[i] = step;
    const up = at(off);
    off[i] = -step;
    const down = at(off);
    off[i] = 0;
    return (up - down) / (2 * step);
  });
}

/** A curve taken for straight where nothing is off. */
export interface Straightened {
  readonly middle: number;
  readonly half: number;
  readonly worst: number;
  readonly contributions: readonly Contribution[];
}

/** Root sum square and worst case of the straight line that touches the curve where nothing is off. */
export function straightened(curve: Curve): Straightened {
  const slopes = slopesOf(curve);
  const parts = curve.of.map((of, i) => {
    const slope = slopes[i] ?? 0;
    const ends = [slope * of.plus.toNumber(), -slope * of.minus.toNumber()];
    return {
      of,
      coefficient: slope,
      least: Math.min(...ends),
      most: Math.max(...ends),
      half: slope * halfOf(of).toNumber(),
    };
  });
  const squared = parts.reduce((sum, { half }) => sum + half * half, 0);
  return {
    middle: curve.at(curve.of.map((one) => middleOf(one).toNumber())),
    half: Math.sqrt(squared),
    worst: parts.reduce((sum, { half }) => sum + Math.abs(half), 0),
    contributions: parts
      .map(({ half, ...part }) => ({ ...part, share: squared === 0 ? 0 : Math.min(1, (half * half) / squared) }))
      .sort(bySize),
  };
}
