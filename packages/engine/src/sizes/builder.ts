import { constant, minus, plus, type Quantity, scale } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import type { Equation } from '../solve/index.js';
import { outward, type Side } from '../spec/sides.js';
import type { PlaneRef } from '../spec/spec.js';
import { type Planes, planeName } from './planes.js';

export const NOTHING: Quantity = constant(Rational.ZERO);
const MINUS_ONE = Rational.of(-1);

/** A plane with the words for it. */
export interface Named {
  readonly number: number | undefined;
  readonly name: string;
}

/** Collects the equations of a cabinet; a plane that does not exist drops its equation. */
export class Builder {
  readonly equations: Equation[] = [];

  constructor(readonly planes: Planes) {}

  side(part: string, side: Side): Named {
    return { number: this.planes.side(part, side), name: `${part}.${side}` };
  }

  plane(ref: PlaneRef): Named {
    return { number: this.planes.of(ref), name: planeName(ref) };
  }

  /** `high − low = length`. */
  distance(statement: string, low: Named, high: Named, length: Quantity, text: string, written = true): void {
    if (low.number === undefined || high.number === undefined) return;
    this.equations.push({
      terms: [
        { unknown: high.number, coefficient: Rational.ONE },
        { unknown: low.number, coefficient: MINUS_ONE },
      ],
      value: length,
      statement,
      text,
      written,
    });
  }

  /** Two planes are one. */
  same(statement: string, a: Named, b: Named, text?: string): void {
    this.distance(statement, b, a, NOTHING, text ?? `${a.name} = ${b.name}`);
  }

  /** `plane` lies `by` outside `base`, seen along the outward normal of `side` (inside when `by` is negative). */
  beyond(statement: string, plane: Named, base: Named, side: Side, by: Quantity, text: string): void {
    this.distance(statement, base, plane, outward(side) === 1 ? by : negative(by), text);
  }

  general(statement: string, terms: readonly (readonly [Named, number])[], value: Quantity, text: string): void {
    const numbered = terms.map(([plane, k]) => ({ unknown: plane.number, coefficient: Rational.of(k) }));
    if (numbered.some((term) => term.unknown === undefined)) return;
    this.equations.push({
      terms: numbered as { unknown: number; coefficient: Rational }[],
      value,
      statement,
      text,
      written: true,
    });
  }
}

export const negative = (q: Quantity): Quantity => scale(q, MINUS_ONE);
export { minus, plus };
