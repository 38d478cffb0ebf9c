import fc from 'fast-check';
import { solve as leastSquares, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { Oracle } from './oracle.fixture.js';
import { difference, generator, INPUTS, randomSystem, recipe, shuffled } from './random.fixture.js';
import { solve } from './solve.js';
import type { LinearSystem, LinearTerm, Multiplier } from './types.js';

const cabinets = recipe({ parts: [1, 9], edges: [0, 30], generals: [0, 8], wrong: [0, 0], statements: [1, 12] });
const doubtful = recipe({ parts: [1, 7], edges: [0, 22], generals: [0, 6], wrong: [0, 3], statements: [1, 12] });

/** Random forms: differences mostly, sometimes mixtures of several planes. */
function forms({ unknowns }: LinearSystem, seed: number): LinearTerm[][] {
  const random = generator(seed);
  const any = () => Math.floor(random() * unknowns.length);
  return Array.from({ length: 12 }, (_, i) =>
    i % 3 < 2
      ? difference(any(), any())
      : [...difference(any(), any()), ...difference(any(), any(), Rational.of(1 + (i % 2), 3))],
  );
}

const total = ({ equations }: LinearSystem, multipliers: readonly Multiplier[]) =>
  Rational.sum(
    multipliers.map(({ equation, multiplier }) => equations[equation]?.value.value.mul(multiplier) ?? Rational.ZERO),
  );

/** Left side of Σ multiplier · equation. */
function combined({ equations }: LinearSystem, multipliers: readonly Multiplier[]): Map<number, Rational> {
  const sum = new Map<number, Rational>();
  for (const { equation, multiplier } of multipliers) {
    for (const { unknown, coefficient } of equations[equation]?.terms ?? []) {
      sum.set(unknown, (sum.get(unknown) ?? Rational.ZERO).add(coefficient.mul(multiplier)));
    }
  }
  for (const [unknown, k] of sum) if (k.isZero()) sum.delete(unknown);
  return sum;
}

function merged(terms: readonly LinearTerm[]): Map<number, Rational> {
  const form = new Map<number, Rational>();
  for (const { unknown, coefficient } of terms) {
    form.set(unknown, (form.get(unknown) ?? Rational.ZERO).add(coefficient));
  }
  for (const [unknown, k] of form) if (k.isZero()) form.delete(unknown);
  return form;
}

describe('solving random cabinets', () => {
  it('gives what full elimination gives, for every distance', () => {
    fc.assert(
      fc.property(cabinets, (of) => {
        const system = randomSystem(of);
        const solution = solve(system);
        const oracle = new Oracle(system.equations);
        expect(oracle.agrees).toBe(true);
        expect(solution.conflicts).toEqual([]);
        for (let a = 0; a < system.unknowns.length; a++) {
          for (let b = 0; b < system.unknowns.length; b++) {
            const [x, y] = [system.unknowns[a], system.unknowns[b]];
            if (x?.axis !== y?.axis || x?.plane !== y?.plane) continue;
            const { value, status } = solution.difference(a, b);
            const expected = oracle.valueOf(difference(a, b));
            expect(value?.toString()).toBe(expected);
            expect(status).toBe(expected === undefined ? 'free' : 'determined');
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it('measures every plane from the least of the largest body of its axis', () => {
    fc.assert(
      fc.property(cabinets, (of) => {
        const system = randomSystem(of);
        const solution = solve(system);
        const oracle = new Oracle(system.equations);
        for (const axis of [0, 1, 2]) {
          const planes = system.unknowns.flatMap((u, i) => (u.plane && u.axis === axis ? [i] : []));
          const origin = solution.origins[axis];
          if (origin === undefined) {
            expect(planes).toEqual([]);
            continue;
          }
          const together = (a: number) => planes.filter((b) => oracle.valueOf(difference(a, b)) !== undefined);
          const main = together(origin);
          expect(Math.max(...planes.map((plane) => together(plane).length))).toBe(main.length);
          for (const plane of planes) {
            const value = solution.valueOf(plane);
            expect(value !== undefined).toBe(main.includes(plane));
            expect(solution.status(plane)).toBe(value ? 'determined' : 'free');
            if (value) expect(`${value}`).toBe(oracle.valueOf(difference(plane, origin)));
            expect(value?.sign()).not.toBe(-1);
          }
          expect(
            solution.bodies.filter((body) => body.axis === axis && body.main).map((body) => [...body.unknowns].sort()),
          ).toEqual([[...main].sort()]);
        }
        system.unknowns.forEach((unknown, i) => {
          if (unknown.plane) return;
          expect(solution.valueOf(i)?.toString()).toBe(oracle.valueOf([{ unknown: i, coefficient: Rational.ONE }]));
        });
      }),
      { numRuns: 100 },
    );
  });

  it('agrees with a numerical linear-algebra library', () => {
    fc.assert(
      fc.property(cabinets, (of) => {
        const system = randomSystem(of);
        const solution = solve(system);
        const rows = system.equations.map(({ terms, value }) => ({
          form: merged(terms),
          value: value.value.toNumber(),
        }));
        for (const origin of solution.origins) {
          if (origin !== undefined) rows.push({ form: new Map([[origin, Rational.ONE]]), value: 0 });
        }
        // Rows of zeros make the matrix as tall as it is wide, which the decomposition wants.
        while (rows.length < system.unknowns.length) rows.push({ form: new Map(), value: 0 });
        const matrix = Matrix.zeros(rows.length, system.unknowns.length);
        rows.forEach(({ form }, i) => {
          for (const [unknown, k] of form) matrix.set(i, unknown, k.toNumber());
        });
        const found = leastSquares(matrix, Matrix.columnVector(rows.map((row) => row.value)), true);
        system.unknowns.forEach((_, i) => {
          const value = solution.valueOf(i);
          if (value) expect(Math.abs(found.get(i, 0) - value.toNumber())).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('explains each determined form by equations that make it up exactly', () => {
    fc.assert(
      fc.property(doubtful, fc.integer(), (of, seed) => {
        const system = randomSystem(of);
        const solution = solve(system);
        const oracle = new Oracle(system.equations);
        for (const form of forms(system, seed)) {
          const multipliers = solution.explain(form);
          // A form whose planes do not cancel on an axis is taken from the origin, which the oracle does not know.
          const cancels = [0, 1, 2].every((axis) =>
            Rational.sum(
              form
                .filter((t) => system.unknowns[t.unknown]?.plane && system.unknowns[t.unknown]?.axis === axis)
                .map((t) => t.coefficient),
            ).isZero(),
          );
          const determined = oracle.valueOf(form) !== undefined;
          if (cancels) expect(multipliers.length > 0).toBe(determined && merged(form).size > 0);
          if (multipliers.length === 0) continue;
          if (cancels) expect(combined(system, multipliers)).toEqual(merged(form));
          if (cancels && oracle.agrees) expect(`${total(system, multipliers)}`).toBe(oracle.valueOf(form));
          expect(multipliers.every(({ multiplier }) => !multiplier.isZero())).toBe(true);
          expect(new Set(multipliers.map(({ equation }) => equation)).size).toBe(multipliers.length);
        }
        system.unknowns.forEach((_, unknown) => {
          const value = solution.valueOf(unknown);
          const multipliers = solution.explain([{ unknown, coefficient: Rational.ONE }]);
          if (value) expect(total(system, multipliers)).toEqual(value);
          else expect(multipliers).toEqual([]);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('knows how sizes follow each input, exactly as the difference of two solutions', () => {
    fc.assert(
      fc.property(cabinets, fc.constantFrom(...INPUTS), fc.integer({ min: 1, max: 50 }), (of, input, step) => {
        const before = randomSystem(of);
        const solved = (value: Rational) => solve(randomSystem(of, new Map([[input, value]])));
        const at = Rational.of(step * 7, 3);
        const now = solved(at);
        const moved = solved(at.add(Rational.of(step, 4)));
        for (const form of forms(before, of.seed)) {
          const [a, b] = form as [LinearTerm, LinearTerm];
          if (form.length > 2) continue;
          const x = now.difference(a.unknown, b.unknown).value;
          const y = moved.difference(a.unknown, b.unknown).value;
          const terms = now.sensitivity(form);
          if (!x || !y) {
            expect(terms).toEqual([]);
            continue;
          }
          const slope = terms.find((term) => term.input === input)?.coefficient ?? Rational.ZERO;
          const sameKind = before.unknowns[a.unknown]?.plane === before.unknowns[b.unknown]?.plane;
          const sameAxis = before.unknowns[a.unknown]?.axis === before.unknowns[b.unknown]?.axis;
          // Across axes the origins themselves may change places.
          if (sameKind && sameAxis) expect(y.sub(x)).toEqual(slope.mul(Rational.of(step, 4)));
          expect(terms.map((term) => term.input)).toEqual([...terms.map((term) => term.input)].sort());
        }
      }),
      { numRuns: 150 },
    );
  });

  it('does not depend on the order of unknowns and equations', () => {
    fc.assert(
      fc.property(doubtful, fc.integer(), fc.integer(), (of, seed, other) => {
        const system = randomSystem(of);
        const mixed = shuffled(system, seed);
        const [a, b] = [solve(system), solve(mixed)];
        const unknown = (i: number) => mixed.unknownAt[i] as number;
        const equation = (i: number) => mixed.equationAt[i] as number;
        system.unknowns.forEach((_, i) => {
          expect(b.valueOf(unknown(i))).toEqual(a.valueOf(i));
          expect(b.status(unknown(i))).toBe(a.status(i));
        });
        for (const form of forms(system, other)) {
          const moved = form.map((term) => ({ ...term, unknown: unknown(term.unknown) }));
          expect(b.explain(moved)).toEqual(a.explain(form).map((m) => ({ ...m, equation: equation(m.equation) })));
          expect(b.sensitivity(moved)).toEqual(a.sensitivity(form));
        }
        expect(b.bodies).toEqual(a.bodies.map((body) => ({ ...body, unknowns: body.unknowns.map(unknown) })));
        expect(b.freeGroups).toEqual(
          a.freeGroups.map((group) => ({
            ...group,
            unknowns: group.unknowns.map(unknown),
            bodies: group.bodies.map((body) => body.map(unknown)),
          })),
        );
        expect(b.conflicts).toEqual(a.conflicts.map((c) => ({ ...c, equations: c.equations.map(equation) })));
      }),
      { numRuns: 150 },
    );
  });

  it('counts what is missing: one fact for each free body, or fewer where they move together', () => {
    fc.assert(
      fc.property(cabinets, (of) => {
        const system = randomSystem(of);
        const solution = solve(system);
        for (const axis of [0, 1, 2]) {
          const groups = solution.freeGroups.filter((group) => group.axis === axis);
          const planes = system.unknowns.flatMap((u, i) => (u.plane && u.axis === axis ? [i] : []));
          if (planes.length === 0) {
            expect(groups).toEqual([]);
            continue;
          }
          expect(groups.flatMap((group) => group.unknowns).sort()).toEqual(
            planes.filter((plane) => solution.status(plane) === 'free').sort(),
          );
          // Holding every distance from the origin takes as many more equations as are missing.
          const origin = solution.origins[axis] as number;
          const held = planes.map((plane) => ({
            terms: difference(plane, origin),
            value: { value: Rational.ZERO, terms: [] },
          }));
          const free = new Oracle([...system.equations, ...held]).rank - new Oracle(system.equations).rank;
          expect(groups.reduce((sum, group) => sum + group.freedom, 0)).toBe(free);
        }
      }),
      { numRuns: 100 },
    );
  });
});
