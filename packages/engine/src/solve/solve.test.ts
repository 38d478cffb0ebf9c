import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { constant, ofInput, type Quantity } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import { solve } from './solve.js';
import type { AxisNumber, Equation, LinearSystem, Solution, Unknown } from './types.js';

const r = (text: string) => Rational.parse(text) as Rational;
const mm = (text: string) => constant(r(text));

/** Writes systems by name: `lh.left` is a plane, `opening` a length. */
class Sketch implements LinearSystem {
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

  between(high: string, low: string) {
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
function carcase(): Sketch {
  return new Sketch()
    .sheet('lh', 'left', 'right')
    .sheet('rh', 'left', 'right')
    .state('width', 'rh.right -lh.left', ofInput('parameter wide', r('600')))
    .state('butt top', 'top.left -lh.right', mm('0'))
    .state('butt top', 'top.right -rh.left', mm('0'));
}

const centred = (s: Sketch) =>
  s.sheet('divider', 'left', 'right').state('centre', 'divider.left divider.right -lh.right -rh.left', mm('0'));

describe('sizes', () => {
  it('follow from what stands around a part, with the chain of reasons from its low to its high side', () => {
    const s = carcase();
    const solution = solve(s);
    expect(s.size(solution, 'top.right', 'top.left')).toBe('564.6');
    expect(s.reasons(solution, 'top.right', 'top.left')).toEqual([
      '-1 butt top: top.left -lh.right',
      '-1 part lh: lh.right -lh.left',
      '1 width: rh.right -lh.left',
      '-1 part rh: rh.right -rh.left',
      '1 butt top: top.right -rh.left',
    ]);
    expect(solution.sensitivity(s.between('top.right', 'top.left')).map((t) => `${t.input} ${t.coefficient}`)).toEqual([
      'parameter wide 1',
      'thickness birch18 -2',
    ]);
    expect(solution.conflicts).toEqual([]);
    expect(solution.freeGroups).toEqual([]);
  });

  it('are measured from the least plane', () => {
    const s = carcase();
    const solution = solve(s);
    expect(s.at(solution, 'lh.left')).toBe('0 determined');
    expect(s.at(solution, 'top.right')).toBe('582.3 determined');
    expect(s.names([solution.origins[0] as number])).toEqual(['lh.left']);
    expect(solution.origins.slice(1)).toEqual([undefined, undefined]);
    const place = solution.explain([{ unknown: s.number('top.left'), coefficient: Rational.ONE }]);
    expect(place.map(({ equation }) => s.equations[equation]?.statement).sort()).toEqual(['butt top', 'part lh']);
  });

  it('halve what is left by centring', () => {
    const s = centred(carcase());
    const solution = solve(s);
    expect(s.size(solution, 'divider.left', 'lh.right')).toBe('273.45');
    expect(
      solution.sensitivity(s.between('divider.left', 'lh.right')).map((t) => `${t.input} ${t.coefficient}`),
    ).toEqual(['parameter wide 1/2', 'thickness birch18 -3/2']);
  });

  it('share openings out evenly, as thirds and sevenths if need be', () => {
    const s = new Sketch().state('height', 'top.bottom -base.top', mm('700'));
    for (const i of [1, 2]) s.sheet(`shelf${i}`, 'bottom', 'top');
    s.state('openings', 'shelf1.bottom -base.top -opening', mm('0'));
    s.state('openings', 'shelf2.bottom -shelf1.top -opening', mm('0'));
    s.state('openings', 'top.bottom -shelf2.top -opening', mm('0'));
    const solution = solve(s);
    // (700 − 2 · 17.7) / 3, worked by hand.
    expect(solution.valueOf(s.number('opening'))).toEqual(r('3323/15'));
    expect(solution.status(s.number('opening'))).toBe('determined');
    expect(s.size(solution, 'shelf2.bottom', 'shelf1.top')).toBe(`${3323 / 15}`);
    const sevenths = new Sketch().state('height', 'a.top -a.bottom', mm('100'));
    sevenths.state('openings', 'a.top -a.bottom -7*opening', mm('0'));
    expect(solve(sevenths).valueOf(sevenths.number('opening'))).toEqual(r('100/7'));
    expect(solution.sensitivity([{ unknown: s.number('opening'), coefficient: Rational.ONE }])).toEqual([
      { input: 'thickness birch18', coefficient: r('-2/3') },
    ]);
  });

  it('follow from the thickness rather than from a longer way round', () => {
    const s = carcase().state('width of lh', 'lh.right -top.left', mm('0'));
    expect(s.reasons(solve(s), 'lh.right', 'lh.left')).toEqual(['1 part lh: lh.right -lh.left']);
  });
});

describe('what is not fixed', () => {
  it('is named with the planes that move together', () => {
    const s = carcase().sheet('shelf', 'left', 'right').state('lip', 'lip.left -shelf.right', mm('5'));
    const solution = solve(s);
    expect(solution.freeGroups.map((g) => [g.axis, s.names(g.unknowns), g.freedom])).toEqual([
      [0, ['lip.left', 'shelf.left', 'shelf.right'], 1],
    ]);
    expect(s.at(solution, 'shelf.left')).toBe('nowhere free');
    expect(s.size(solution, 'lip.left', 'shelf.left')).toBe('22.7');
    expect(s.size(solution, 'shelf.left', 'lh.left')).toBe('free');
    expect(solution.explain(s.between('shelf.left', 'lh.left'))).toEqual([]);
    expect(solution.sensitivity(s.between('shelf.left', 'lh.left'))).toEqual([]);
  });

  it('is one group where one missing fact leaves several parts loose', () => {
    const s = new Sketch()
      .sheet('lh', 'left', 'right')
      .state('lip', 'lip.left -lh.left', mm('0'))
      .sheet('rh', 'left', 'right');
    centred(s);
    const [group, ...others] = solve(s).freeGroups;
    expect(others).toEqual([]);
    expect(group?.freedom).toBe(1);
    expect(group?.bodies.map((body) => s.names(body))).toEqual([
      ['divider.left', 'divider.right'],
      ['rh.left', 'rh.right'],
    ]);
  });

  it('includes a part whose far side nothing ties, and no length that touches no plane', () => {
    const s = carcase().state('lonely', 'opening -2*pitch', mm('3'));
    s.number('top2.left');
    const solution = solve(s);
    expect(solution.freeGroups.map((g) => s.names(g.unknowns))).toEqual([['top2.left']]);
    expect(solution.status(s.number('opening'))).toBe('free');
  });

  it('is counted on each axis for itself', () => {
    const s = new Sketch();
    s.number('p.front', 1);
    s.number('p.bottom', 2);
    s.number('q.bottom', 2);
    const solution = solve(s);
    expect(s.at(solution, 'p.front')).toBe('0 determined');
    expect(solution.freeGroups.map((g) => [g.axis, s.names(g.unknowns)])).toEqual([[2, ['q.bottom']]]);
  });
});

describe('contradictions', () => {
  it('name the statements, and how much they miss by', () => {
    const s = carcase().state('clear width', 'rh.left -lh.right', mm('570'));
    const solution = solve(s);
    expect(solution.conflicts).toHaveLength(1);
    const [conflict] = solution.conflicts;
    expect([...(conflict?.statements ?? [])].sort()).toEqual(['clear width', 'part lh', 'part rh', 'width']);
    expect(conflict?.blame).toBe('clear width');
    expect(conflict?.miss).toEqual(r('5.4'));
    expect(conflict?.axis).toBe(0);
    expect(s.size(solution, 'rh.right', 'lh.left')).toBe('contradicted');
    expect(s.size(solution, 'lh.right', 'lh.left')).toBe('17.7');
  });

  it('are measured on the statement, not on the sum that does not close', () => {
    const s = new Sketch().state('openings', 'a.bottom -base.top -opening', mm('0'));
    s.state('openings', 'b.bottom -a.bottom -opening', mm('0')).state(
      'openings',
      'top.bottom -b.bottom -opening',
      mm('0'),
    );
    s.state('height', 'top.bottom -base.top', mm('600')).state('pitch', 'opening', mm('210'));
    const [conflict] = solve(s).conflicts;
    // Three openings of 210 are 630; seen from the pitch each is 10 too many.
    expect(conflict?.blame).toBe('height');
    expect(conflict?.miss).toEqual(r('-30'));
    const other = solve({
      ...s,
      equations: s.equations.map((e) => (e.statement === 'height' ? { ...e, written: false } : e)),
    });
    expect(other.conflicts[0]?.blame).toBe('pitch');
    expect(other.conflicts[0]?.miss).toEqual(r('10'));
  });

  it('blame the statement that all of them share', () => {
    const s = new Sketch().state('a: height of lh', 'lh.top -lh.bottom', mm('720'));
    s.state('b: height of rh', 'rh.top -rh.bottom', mm('720')).state(
      'c: height of back',
      'back.top -back.bottom',
      mm('720'),
    );
    s.state('d: flush', 'rh.bottom -lh.bottom', mm('0')).state('d: flush', 'back.bottom -lh.bottom', mm('0'));
    s.state('e: step', 'rh.top -lh.top', mm('0')).state('f: step', 'back.top -lh.top', mm('0'));
    const wrong = s.equations.map((e) => (e.statement.startsWith('a') ? { ...e, value: mm('702') } : e));
    const [conflict] = solve({ ...s, equations: wrong }).conflicts;
    expect(conflict?.blame).toBe('a: height of lh');
    expect(conflict?.miss).toEqual(r('-18'));
  });

  it('are found one after the other, in different places', () => {
    const s = carcase()
      .state('clear width', 'rh.left -lh.right', mm('570'))
      .state('top', 'top.right -top.left', mm('564.6'));
    s.state('depth 1', 'p.right -p.left', mm('1')).state('depth 2', 'p.right -p.left', mm('2'));
    const sets = solve(s).conflicts.map((conflict) => [...conflict.statements].sort());
    expect(sets).toContainEqual(['depth 1', 'depth 2']);
    expect(sets[0]).toHaveLength(2);
    expect(sets.length).toBeGreaterThan(1);
  });

  it('spare sizes that no loop of theirs runs through', () => {
    const s = carcase().state('lip', 'lip.left -top.right', mm('5'));
    s.state('lip', 'lip.right -lip.left', mm('40')).state('top', 'top.right -top.left', mm('500'));
    const solution = solve(s);
    expect(s.size(solution, 'lip.right', 'lip.left')).toBe('40');
    expect(s.size(solution, 'lip.right', 'top.right')).toBe('45');
    expect(s.size(solution, 'lip.right', 'top.left')).toBe('contradicted');
  });
});

describe('equations of every kind', () => {
  it('may say nothing, or something impossible, or the same twice', () => {
    const s = carcase().state('nothing', 'lh.left -lh.left', mm('0')).state('width', 'rh.right -lh.left', mm('600'));
    expect(solve(s).conflicts).toEqual([]);
    s.state('impossible', 'lh.left -lh.left', mm('5'));
    s.equations.push({ terms: [], value: mm('-3'), statement: 'empty', text: '', written: true });
    const { conflicts } = solve(s);
    expect(conflicts.map(({ statements, miss, blame }) => [statements, `${miss}`, blame])).toEqual([
      [['empty'], '-3', 'empty'],
      [['impossible'], '5', 'impossible'],
    ]);
    expect(s.size(solve(s), 'top.right', 'top.left')).toBe('564.6');
  });

  it('may fix a plane outright', () => {
    const s = carcase().state('outright', '2*lh.right', mm('100'));
    const solution = solve(s);
    expect(s.at(solution, 'lh.right')).toBe('50 determined');
    expect(s.at(solution, 'lh.left')).toBe('32.3 determined');
    expect(solution.origins[0]).toBeUndefined();
    expect(solution.explain([{ unknown: s.number('lh.left'), coefficient: Rational.ONE }])).toHaveLength(2);
    expect(solve(s.state('again', 'rh.right', mm('600'))).conflicts[0]?.statements).toContain('outright');
  });

  it('may fix the sum of two planes outright', () => {
    const s = new Sketch().state('sum', 'a.left b.left', mm('30')).state('step', 'b.left -a.left', mm('10'));
    const solution = solve(s);
    expect(s.at(solution, 'a.left')).toBe('10 determined');
    expect(s.at(solution, 'b.left')).toBe('20 determined');
  });

  it('may run across axes', () => {
    const s = new Sketch().state('width', 'a.right -a.left', mm('30'));
    s.number('a.bottom', 2);
    s.number('a.top', 2);
    s.state('square', 'a.top -a.bottom -a.right a.left', mm('0'));
    const solution = solve(s);
    expect(s.size(solution, 'a.top', 'a.bottom')).toBe('30');
    expect(s.at(solution, 'a.top')).toBe('30 determined');
    expect(solution.freeGroups).toEqual([]);
  });

  it('count for nothing if they name unknowns that do not exist', () => {
    const s = carcase();
    for (const unknown of [-1, 99, 0.5, Number.NaN]) {
      s.equations.push({
        terms: [{ unknown, coefficient: Rational.ONE }],
        value: mm('1'),
        statement: 'x',
        text: '',
        written: true,
      });
    }
    const solution = solve(s);
    expect(solution.conflicts).toEqual([]);
    expect(s.at(solution, 'top.right')).toBe('582.3 determined');
    for (const unknown of [-1, 99, 0.5, Number.NaN]) {
      expect(solution.valueOf(unknown)).toBeUndefined();
      expect(solution.status(unknown)).toBe('free');
      expect(solution.difference(unknown, 0)).toEqual({ value: undefined, status: 'free' });
      expect(solution.explain([{ unknown, coefficient: Rational.ONE }])).toEqual([]);
    }
  });

  it('may be none', () => {
    const solution = solve({ unknowns: [], equations: [] });
    expect([solution.bodies, solution.freeGroups, solution.conflicts]).toEqual([[], [], []]);
    expect(solution.explain([])).toEqual([]);
  });

  it('may form a chain of thousands, with a knot at its end', () => {
    const equations: Equation[] = [];
    const unknowns: Unknown[] = [];
    for (let i = 0; i < 4000; i++) {
      unknowns.push({ axis: 0, label: `p${i}`, plane: true });
      const terms = [{ unknown: i, coefficient: Rational.ONE }];
      if (i > 0) terms.push({ unknown: i - 1, coefficient: Rational.of(-1) });
      if (i > 0) equations.push({ terms, value: mm('0.1'), statement: `s${i}`, text: '', written: true });
    }
    const solution = solve({ unknowns, equations });
    expect(solution.difference(3999, 0).value).toEqual(r('399.9'));
    const terms = [3999, 0].map((unknown, i) => ({ unknown, coefficient: Rational.of(i === 0 ? 1 : -1) }));
    expect(solution.explain(terms)).toHaveLength(3999);
    const knot = { terms, value: mm('400'), statement: 'knot', text: '', written: true };
    expect(solve({ unknowns, equations: [...equations, knot] }).conflicts[0]?.statements).toHaveLength(4000);
  });

  it('never make it throw', () => {
    const number = fc
      .tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: 1, max: 3 }))
      .map(([n, d]) => Rational.of(n, d));
    const term = fc.record({ unknown: fc.integer({ min: -1, max: 9 }), coefficient: number });
    const input = fc.record({ input: fc.constantFrom('a', 'b'), coefficient: number });
    const equation = fc.record({
      terms: fc.array(term, { maxLength: 5 }),
      value: fc.record({ value: number, terms: fc.array(input, { maxLength: 1 }) }),
      statement: fc.constantFrom('s', 't', 'u', 'v', 'w'),
      text: fc.constantFrom('', 'x'),
      written: fc.boolean(),
    });
    const unknown = fc.record({
      axis: fc.constantFrom<AxisNumber[]>(0, 1, 2),
      label: fc.constantFrom('a', 'b', 'c', 'd'),
      plane: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(unknown, { maxLength: 9 }), fc.array(equation, { maxLength: 14 }), (unknowns, equations) => {
        const solution = solve({ unknowns, equations });
        for (const { miss, statements, equations: loop } of solution.conflicts) {
          expect(miss.isZero()).toBe(false);
          expect(statements.length).toBeGreaterThan(0);
          expect(loop.length).toBeGreaterThan(0);
        }
        unknowns.forEach((_, a) => {
          expect(solution.valueOf(a) === undefined).toBe(solution.status(a) === 'free');
          for (let b = -1; b <= unknowns.length; b++) {
            const { value, status } = solution.difference(a, b);
            expect(value === undefined).toBe(status === 'free');
            const form = [
              { unknown: a, coefficient: Rational.ONE },
              { unknown: b, coefficient: Rational.TWO },
            ];
            solution.explain(form);
            solution.sensitivity(form);
          }
        });
      }),
      { numRuns: 300 },
    );
  });
});
