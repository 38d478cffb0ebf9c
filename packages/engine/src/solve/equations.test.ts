import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { carcase, mm, r, Sketch } from './sketch.fixture.js';
import { solve } from './solve.js';
import type { AxisNumber, Equation, Unknown } from './types.js';

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
