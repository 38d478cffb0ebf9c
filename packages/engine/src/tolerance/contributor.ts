import type { Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Tolerance } from '../spec/input.js';
import type { Source } from '../spec/source.js';

/** What kind of thing is off; the cure follows from it. */
export type Origin =
  | 'thickness'
  | 'band'
  | 'written'
  | 'saw'
  | 'square'
  | 'mitre'
  | 'cuts'
  | 'machine'
  | 'fence'
  | 'spacer'
  | 'stop'
  | 'line'
  | 'cup'
  | 'dirt';

/**
 * One thing that may be off, on its own: by how much more or less than it should be (mm; degrees for a bevel), both
 * ≥ 0. Two results that name the same contributor stray together.
 */
export interface Contributor extends Tolerance {
  readonly id: string;
  readonly origin: Origin;
  /** In the trade's words: "thickness of top (birch18)". */
  readonly words: Text;
  /** The material, of a thickness. */
  readonly sheet?: string | undefined;
  /** Where its figure is written. */
  readonly source?: Source | undefined;
}

/** Middle of what a contributor may be, from where it should be. */
export const middleOf = ({ plus, minus }: Tolerance): Rational => plus.sub(minus).div(Rational.TWO);
/** Half of the range a contributor has. */
export const halfOf = ({ plus, minus }: Tolerance): Rational => plus.add(minus).div(Rational.TWO);

/** A contributor that finds its words only when they are told. */
class Made implements Contributor {
  constructor(
    readonly id: string,
    readonly origin: Origin,
    readonly plus: Rational,
    readonly minus: Rational,
    private readonly say: () => Text,
    readonly sheet: string | undefined,
    readonly source: Source | undefined,
  ) {}

  get words(): Text {
    return this.say();
  }
}

/** Contributors by id: the same one, however often it is asked for. */
export class Contributors {
  private readonly known = new Map<string, Contributor>();

  /** Undefined where there is nothing to be off. */
  of(
    id: string,
    origin: Origin,
    tolerance: Tolerance | undefined,
    words: () => Text,
    source?: Source,
    sheet?: string,
  ): Contributor | undefined {
    if (!tolerance || (tolerance.plus.isZero() && tolerance.minus.isZero())) return undefined;
    const found = this.known.get(id);
    if (found) return found;
    const made = new Made(id, origin, tolerance.plus, tolerance.minus, words, sheet, source);
    this.known.set(id, made);
    return made;
  }
}
