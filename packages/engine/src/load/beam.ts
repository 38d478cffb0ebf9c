import type { Bounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';

/** Standard acceleration of free fall, m/s², exactly (3rd General Conference on Weights and Measures, 1901). */
export const FREE_FALL = Rational.of(980665, 100000);

/** A board that spans a gap. */
export interface Beam {
  /** Clear span, mm, > 0. */
  readonly span: Rational;
  /** Across the span, mm, > 0. */
  readonly width: Rational;
  /** mm, > 0. */
  readonly thickness: Rational;
  /** Modulus of elasticity along the span, N/mm², > 0. */
  readonly stiffness: Rational;
  /** Ends free to turn on their supports, or held so that they cannot. */
  readonly ends: 'resting' | 'fixed';
}

/** What a beam carries. */
export interface BeamLoad {
  /** Spread evenly, N for each mm of span, ≥ 0. */
  readonly spread: Rational;
  /** At the middle of the span, N, ≥ 0. */
  readonly middle: Rational;
}

/**
 * What a beam sags at its middle: δ = k·w·L⁴/(E·I) of what is spread and k·P·L³/(E·I) of what lies at the middle, with
 * I = b·t³/12. These are the usual formulae of elastic bending; the spread one on resting ends gives the spans printed
 * in the Architectural Woodwork Standards (2009). Shear is not reckoned.
 */
const FACTORS = {
  resting: { spread: Rational.of(5, 384), middle: Rational.of(1, 48) },
  fixed: { spread: Rational.of(1, 384), middle: Rational.of(1, 192) },
} as const;

/** Sag at the middle, mm, exactly. */
export function deflection(beam: Beam, load: BeamLoad): Rational {
  const { spread, middle } = perSpan(beam);
  const cube = power(beam.span, 3);
  return spread.mul(load.spread).mul(cube).mul(beam.span).add(middle.mul(load.middle).mul(cube));
}

/** How the load of a shelf goes with its span. */
export interface SpanLoad {
  /** Newtons for each mm of span, whatever the span. */
  readonly perLength: Rational;
  /** Newtons in all, spread over the board, which is longer than its span by `beyond`. */
  readonly whole: Rational;
  readonly beyond: Rational;
  /** Newtons at the middle. */
  readonly middle: Rational;
}

/** What a shelf may sag: in parts of its span, and at most. */
export interface SagLimit {
  readonly part: Rational;
  readonly atMost?: Rational | undefined;
}

/**
 * The longest span, mm, at which a board sags no more than a limit under a load. Sag in parts of the span grows with the
 * span, so halving the interval finds it; undefined where not even a span of ten metres sags so much.
 */
export function longestSpan(beam: Omit<Beam, 'span'>, load: SpanLoad, limit: SagLimit): Bounded | undefined {
  const factors = perSpan(beam);
  const [spread, middle] = [factors.spread.toNumber(), factors.middle.toNumber() * load.middle.toNumber()];
  const [perLength, whole, beyond] = [load.perLength, load.whole, load.beyond].map((r) => r.toNumber()) as [
    number,
    number,
    number,
  ];
  const [part, atMost] = [limit.part.toNumber(), limit.atMost?.toNumber() ?? Number.POSITIVE_INFINITY];
  const passes = (span: number): boolean => {
    const sag = span ** 3 * (spread * (perLength + whole / (span + beyond)) * span + middle);
    return sag <= part * span && sag <= atMost;
  };
  if (passes(LONGEST)) return undefined;
  let [low, high] = [0, LONGEST];
  while (high - low > PRECISE) {
    const half = (low + high) / 2;
    if (passes(half)) low = half;
    else high = half;
  }
  return { value: low, error: high - low + PRECISE };
}

/** No shelf is longer, mm. */
const LONGEST = 10_000;
/** How exactly a longest span is told, mm. */
const PRECISE = 1e-6;

/** Sag of one N/mm over L⁴, and of one N over L³. */
function perSpan({ width, thickness, stiffness, ends }: Omit<Beam, 'span'>): { spread: Rational; middle: Rational } {
  const inertia = width.mul(power(thickness, 3)).div(Rational.of(12));
  const one = Rational.ONE.div(stiffness.mul(inertia));
  return { spread: FACTORS[ends].spread.mul(one), middle: FACTORS[ends].middle.mul(one) };
}

function power(r: Rational, n: number): Rational {
  return n === 1 ? r : r.mul(power(r, n - 1));
}
