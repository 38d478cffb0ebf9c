import { constant, ofInput, type Quantity } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import type { AxisNumber, Equation, LinearSystem, LinearTerm, Solution, Unknown } from './types.js';

export const r = (text: string): Rational => Rational.parse(text) as Rational;
export const mm = (text: string): Quantity => constant(r(text));

/** Writes systems by name: `lh.left` is a plane, `opening` a length. */
export class Sketch implements LinearSystem {
  readonly unknowns: Unknown[] = [];
  readonly equations: Equation[] = [];

  number(label: string, axis: AxisNumber = 0): number {
    const known = this.unknowns.findIndex((unknown) => unknown.label === label);
    return known >= 0 ? known : this.unknowns.push({ axis, label, plane: label.includes('.') }) - 1;
  }

  /** `terms` are labels, those to take away with a minus: 'rh.right', '-lh.left'. */
  state(statement: string, terms: string, value: Quantity, written = true): this {
    const parsed = terms.split(' ').map((term) => {
      const [, sign, times, label] = /^(-?)(?:([\d/]+)\*)?(.+)$/.exec(term) ?? [];
      const size = r(times ?? '1');
      return { unknown: this.number(label ?? ''), coefficient: sign === '-' ? size.neg() : size };
    });
    this.equations.push({ terms: parsed, value, statement, text: `${statement}: ${terms}`, written });
    return this;
  }

  sheet(part: string, low: string, high: string, thickness = ofInput('thickness birch18', r('17.7'))): this {
    return this.state(`part ${part}`, `${part}.${high} -${part}.${low}`, thickness, false);
  }

  size(solution: Solution, high: string, low: string): string | undefined {
    const { value, status } = solution.difference(this.number(high), this.number(low));
    return status === 'determined' ? `${value?.toNumber()}` : status;
  }

  at(solution: Solution, label: string): string {
    const n = this.number(label);
    return `${solution.valueOf(n)?.toNumber() ?? 'nowhere'} ${solution.status(n)}`;
  }

  reasons(solution: Solution, high: string, low: string): string[] {
    return solution
      .explain(this.between(high, low))
      .map(({ equation, multiplier }) => `${multiplier} ${this.equations[equation]?.text}`);
  }

  between(high: string, low: string): LinearTerm[] {
    return [
      { unknown: this.number(high), coefficient: Rational.ONE },
      { unknown: this.number(low), coefficient: Rational.of(-1) },
    ];
  }

  names(numbers: readonly number[] = []): string[] {
    return numbers.map((n) => this.unknowns[n]?.label ?? `${n}`);
  }
}

/** Two sides 600 apart over all, and a top between them. */
export function carcase(): Sketch {
  return new Sketch()
    .sheet('lh', 'left', 'right')
    .sheet('rh', 'left', 'right')
    .state('width', 'rh.right -lh.left', ofInput('parameter wide', r('600')))
    .state('butt top', 'top.left -lh.right', mm('0'))
    .state('butt top', 'top.right -rh.left', mm('0'));
}

export const centred = (s: Sketch) =>
  s.sheet('divider', 'left', 'right').state('centre', 'divider.left divider.right -lh.right -rh.left', mm('0'));
