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

/** What a contributor is called and where it stands; worked out only when it is told. */
export interface Naming {
  readonly id: () => string;
  readonly words: () => Text;
  readonly source?: Source | undefined;
  readonly sheet?: string | undefined;
}

class Made implements Contributor {
  constructor(
    readonly origin: Origin,
    readonly plus: Rational,
    readonly minus: Rational,
    private readonly naming: Naming,
  ) {}

  get id(): string {
    return this.naming.id();
  }

  get words(): Text {
    return this.naming.words();
  }

  get sheet(): string | undefined {
    return this.naming.sheet;
  }

  get source(): Source | undefined {
    return this.naming.source;
  }
}

/** A contributor of its own; undefined where there is nothing to be off. */
export function contributor(origin: Origin, tolerance: Tolerance | undefined, naming: Naming): Contributor | undefined {
  if (!tolerance || (tolerance.plus.isZero() && tolerance.minus.isZero())) return undefined;
  return new Made(origin, tolerance.plus, tolerance.minus, naming);
}

/** Contributors that come into more than one place: the same one, however often it is asked for. */
export class Shared {
  private readonly known = new Map<string, Contributor | undefined>();

  of(
    id: string,
    origin: Origin,
    tolerance: Tolerance | undefined,
    naming: Omit<Naming, 'id'>,
  ): Contributor | undefined {
    if (!tolerance) return undefined;
    if (!this.known.has(id)) this.known.set(id, contributor(origin, tolerance, { ...naming, id: () => id }));
    return this.known.get(id);
  }
}
