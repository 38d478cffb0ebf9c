import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { agree, Oracle, smallestDisagreement, subsets } from './oracle.fixture.js';
import { difference, randomSystem, recipe } from './random.fixture.js';
import { CERTAIN } from './smallest.js';
import { solve } from './solve.js';
import type { Conflict, LinearSystem } from './types.js';
import { MAX_CONFLICTS } from './types.js';

const small = recipe({ parts: [1, 4], edges: [0, 14], generals: [0, 5], wrong: [0, 4], statements: [1, 8] });
const large = recipe({ parts: [4, 25], edges: [20, 120], generals: [0, 10], wrong: [1, 6], statements: [10, 60] });
const tiny = recipe({ parts: [1, 2], edges: [0, 6], generals: [0, 2], wrong: [1, 3], statements: [1, 4] });

/** What each conflict promises of itself. */
function holds(system: LinearSystem, conflict: Conflict): void {
  const { statements, equations, blame, miss } = conflict;
  expect(agree(system, statements)).toBe(false);
  for (const one of statements) {
    expect(
      agree(
        system,
        statements.filter((other) => other !== one),
      ),
    ).toBe(true);
  }
  const loop = equations.map((i) => system.equations[i] as LinearSystem['equations'][number]);
  expect(new Oracle(loop).agrees).toBe(false);
  loop.forEach((_, i) => {
    expect(new Oracle(loop.filter((_, j) => j !== i)).agrees).toBe(true);
  });
  expect([...new Set(loop.map((equation) => equation.statement))]).toEqual(statements);
  expect(loop[0]?.statement).toBe(blame);
  expect(
    loop.some((equation) => equation.statement === blame && equation.written) || loop.every((e) => !e.written),
  ).toBe(true);
  // Taking the miss off what blame says makes the loop close, if it says it once.
  const own = loop.filter((equation) => equation.statement === blame);
  expect(miss.isZero()).toBe(false);
  if (own.length > 1) return;
  const cured = loop.map((equation) =>
    equation === own[0]
      ? { ...equation, value: { ...equation.value, value: equation.value.value.sub(miss) } }
      : equation,
  );
  expect(new Oracle(cured).agrees).toBe(true);
}

describe('conflicts in random cabinets', () => {
  it('are found exactly where equations disagree, and the first is the smallest there is', () => {
    fc.assert(
      fc.property(small, (of) => {
        const system = randomSystem(of);
        const { conflicts } = solve(system);
        expect(new Set(system.equations.map((e) => e.statement)).size).toBeLessThanOrEqual(CERTAIN);
        expect(conflicts[0]?.statements.length).toBe(smallestDisagreement(system));
        for (const conflict of conflicts) holds(system, conflict);
      }),
      { numRuns: 250 },
    );
  });

  it('are minimal in large ones, different from each other, and few', () => {
    fc.assert(
      fc.property(large, (of) => {
        const system = randomSystem(of);
        const { conflicts } = solve(system);
        expect(conflicts.length > 0).toBe(!new Oracle(system.equations).agrees);
        expect(conflicts.length).toBeLessThanOrEqual(MAX_CONFLICTS);
        for (const conflict of conflicts) holds(system, conflict);
        const sets = conflicts.map((conflict) => [...conflict.statements].sort().join());
        expect(new Set(sets).size).toBe(sets.length);
      }),
      { numRuns: 60 },
    );
  });

  it('taint exactly the sizes that can be worked out with two results', () => {
    fc.assert(
      fc.property(tiny, (of) => {
        const facts = randomSystem(of);
        const system = { ...facts, equations: facts.equations.map((equation) => ({ ...equation, written: true })) };
        const solution = solve(system);
        const agreeing: Oracle[] = [];
        for (let size = 0; size <= system.equations.length; size++) {
          for (const set of subsets(system.equations, size)) {
            const oracle = new Oracle(set);
            // Independent sets are enough: whatever follows, follows from one of them.
            if (oracle.agrees && oracle.rank === size) agreeing.push(oracle);
          }
        }
        system.unknowns.forEach((x, a) => {
          system.unknowns.forEach((y, b) => {
            if (a === b || x.axis !== y.axis || !x.plane || !y.plane) return;
            const form = difference(a, b);
            const results = new Set(
              agreeing.map((oracle) => oracle.valueOf(form)).filter((value) => value !== undefined),
            );
            const expected = results.size === 0 ? 'free' : results.size === 1 ? 'determined' : 'contradicted';
            const { status, value } = solution.difference(a, b);
            expect(status).toBe(expected);
            if (value) expect([...results]).toContain(`${value}`);
          });
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe('sheets', () => {
  it('keep their thickness through any contradiction of statements', () => {
    fc.assert(
      fc.property(large, (of) => {
        const { equations, unknowns } = randomSystem({ ...of, wrong: 0 });
        const wrong = equations.map((equation, i) =>
          equation.written && i % 3 === 0 ? { ...equation, value: { value: Rational.of(i), terms: [] } } : equation,
        );
        const solution = solve({ unknowns, equations: wrong });
        for (const { terms, value, written } of equations) {
          const [high, low] = terms;
          if (written || !high || !low) continue;
          expect(solution.difference(high.unknown, low.unknown)).toEqual({ value: value.value, status: 'determined' });
        }
      }),
      { numRuns: 50 },
    );
  });
});
