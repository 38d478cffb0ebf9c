import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { type Contributor, halfOf, middleOf } from './contributor.js';
import type { Tried } from './tried.js';

/** What many trials gave for one result, mm. */
export interface Trials {
  readonly samples: number;
  readonly mean: number;
  /** Standard deviation. */
  readonly deviation: number;
  readonly least: number;
  readonly most: number;
  /** Part of the trials further from nothing than the limit; absent without a limit. */
  readonly beyond?: number | undefined;
}

/**
 * Standard normal deviates from a seeded generator, by Box and Muller's rule from pairs of 32-bit uniforms; the same
 * ones for the same seed on every machine.
 */
export function normals(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  let spare: number | undefined;
  const uniform = () => ((generator.next() >>> 0) + 0.5) / 2 ** 32;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}

/**
 * Tries many cabinets: each contributor is drawn once a trial, about the middle of its range with a third of half the
 * range for its standard deviation (so that the written tolerance is what 99.7 % keep), and every result is worked out
 * from the same draws.
 */
export function tryOut(
  wanted: readonly { readonly tried: Tried; readonly limit?: number | undefined }[],
  samples: number,
  seed: number,
): readonly Trials[] {
  const places = new Map<string, number>();
  const drawn: Contributor[] = [];
  const placeOf = (one: Contributor): number => {
    const known = places.get(one.id);
    if (known !== undefined) return known;
    places.set(one.id, drawn.length);
    drawn.push(one);
    return drawn.length - 1;
  };
  const compiled = wanted.map(({ tried }) => compile(tried, placeOf));
  const middles = Float64Array.from(drawn, (one) => middleOf(one).toNumber());
  const thirds = Float64Array.from(drawn, (one) => halfOf(one).toNumber() / 3);
  const tallies = wanted.map(({ limit }) => new Tally(limit));
  const values = new Float64Array(drawn.length);
  const next = normals(seed);
  for (let trial = 0; trial < samples; trial++) {
    for (let i = 0; i < values.length; i++) values[i] = (middles[i] as number) + (thirds[i] as number) * next();
    for (let i = 0; i < compiled.length; i++) (tallies[i] as Tally).add((compiled[i] as Compiled)(values));
  }
  return tallies.map((tally) => tally.result());
}

type Compiled = (values: Float64Array) => number;

function compile(tried: Tried, placeOf: (one: Contributor) => number): Compiled {
  if ('curve' in tried) {
    const places = tried.curve.of.map(placeOf);
    const off = places.map(() => 0);
    return (values) => {
      for (let i = 0; i < places.length; i++) off[i] = values[places[i] as number] as number;
      return tried.curve.at(off);
    };
  }
  const { shift, terms } = tried.stack;
  const start = shift.toNumber();
  const places = Int32Array.from(terms, ({ of }) => placeOf(of));
  const coefficients = Float64Array.from(terms, ({ coefficient }) => coefficient.toNumber());
  return (values) => {
    let sum = start;
    for (let i = 0; i < places.length; i++)
      sum += (coefficients[i] as number) * (values[places[i] as number] as number);
    return sum;
  };
}

/** Mean and deviation as they come in (Welford's rule), so that no trial is kept. */
class Tally {
  private samples = 0;
  private mean = 0;
  private squares = 0;
  private least = Number.POSITIVE_INFINITY;
  private most = Number.NEGATIVE_INFINITY;
  private beyond = 0;

  constructor(private readonly limit: number | undefined) {}

  add(value: number): void {
    this.samples++;
    const before = value - this.mean;
    this.mean += before / this.samples;
    this.squares += before * (value - this.mean);
    if (value < this.least) this.least = value;
    if (value > this.most) this.most = value;
    if (this.limit !== undefined && Math.abs(value) > this.limit) this.beyond++;
  }

  result(): Trials {
    const { samples, mean, squares, least, most, beyond, limit } = this;
    const deviation = samples > 1 ? Math.sqrt(squares / (samples - 1)) : 0;
    return { samples, mean, deviation, least, most, ...(limit === undefined ? {} : { beyond: beyond / samples }) };
  }
}
