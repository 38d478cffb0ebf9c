import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { cheapestCover, type Precedence, sequenceSetups } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';

/** Where the published instances lie beside the project; they are not part of it. */
const DATA = fileURLToPath(new URL('../../../shared/data/', import.meta.url));
const isHere = existsSync(`${DATA}optima.json`);
if (!isHere) process.stdout.write(`published instances are not here (${DATA}), so nothing is checked against them\n`);

const optima: Readonly<Record<string, Readonly<Record<string, number>>>> = isHere
  ? JSON.parse(readFileSync(`${DATA}optima.json`, 'utf8'))
  : {};

function textOf(folder: string, name: string): string {
  const file = readdirSync(DATA + folder).find((one) => one.startsWith(`${name}.`)) ?? name;
  const bytes = readFileSync(`${DATA}${folder}/${file}`);
  return (file.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString();
}

/** A matrix in TSPLIB's FULL_MATRIX; sequential-ordering files repeat the dimension before it. */
function matrixOf(folder: string, name: string): number[][] {
  const text = textOf(folder, name);
  const n = Number(/DIMENSION\s*:\s*(\d+)/.exec(text)?.[1]);
  const numbers = (/EDGE_WEIGHT_SECTION([\s\d-]*)/.exec(text)?.[1] ?? '').trim().split(/\s+/).map(Number);
  const skip = numbers.length - n * n;
  return Array.from({ length: n }, (_, i) => numbers.slice(skip + i * n, skip + (i + 1) * n));
}

// TSPLIB95 (Reinelt), asymmetric instances up to 55 nodes; optima as published.
describe.skipIf(!isHere)('asymmetric tours', () => {
  test.each(['br17', 'ftv33', 'ftv35', 'ftv38', 'ftv44', 'ftv47', 'ft53', 'ry48p'])(
    '%s',
    async (name) => {
      const { cost, proven, order } = await sequenceSetups(matrixOf('atsp', name), {
        cyclic: true,
        timeLimitMs: 120_000,
      });
      expect([cost, proven]).toEqual([optima.atsp?.[name], true]);
      expect(new Set(order).size).toBe(order.length);
    },
    180_000,
  );

  // Larger ones end in time with a bound that the optimum lies within.
  test.each(['ftv70', 'kro124p', 'ftv170'])(
    '%s lies within its bound',
    async (name) => {
      const { cost, lowerBound } = await sequenceSetups(matrixOf('atsp', name), { cyclic: true, timeLimitMs: 4000 });
      const optimum = optima.atsp?.[name] ?? Number.NaN;
      expect(lowerBound).toBeLessThanOrEqual(optimum);
      expect(cost).toBeGreaterThanOrEqual(optimum);
      expect(cost / lowerBound).toBeLessThan(1.1);
    },
    60_000,
  );
});

/** −1 at c[i][j]: j must come before i. */
function ordering(name: string): { readonly cost: number[][]; readonly precedences: Precedence[] } {
  const precedences: Precedence[] = [];
  const cost = matrixOf('sop', name).map((row, i) =>
    row.map((entry, j) => {
      if (entry !== -1 || i === j) return entry;
      precedences.push([j, i]);
      return Number.POSITIVE_INFINITY;
    }),
  );
  return { cost, precedences };
}

// Sequential ordering of TSPLIB95 (Ascheuer, Escudero): open paths with what must come first.
describe.skipIf(!isHere)('orders with precedences', () => {
  test.each(['ESC07', 'ESC11', 'ESC12', 'br17.10'])(
    '%s',
    async (name) => {
      const { cost, precedences } = ordering(name);
      const found = await sequenceSetups(cost, { precedences });
      expect([found.cost, found.proven]).toEqual([optima.sop?.[`${name}*`], true]);
    },
    60_000,
  );

  test.each(['ESC25', 'p43.4', 'ft53.4', 'rbg048a'])(
    '%s lies within its bound',
    async (name) => {
      const { cost, precedences } = ordering(name);
      const found = await sequenceSetups(cost, { precedences, timeLimitMs: 4000 });
      const best = optima.sop?.[name] ?? Number.NaN;
      // Best known is not always proven, so only a bound above it would be wrong for certain.
      expect(found.lowerBound).toBeLessThanOrEqual(best);
      expect(found.cost).toBeGreaterThanOrEqual(found.lowerBound);
      const place = new Map(found.order.map((node, i): [number, number] => [node, i]));
      expect(precedences.every(([a, b]) => (place.get(a) ?? 0) < (place.get(b) ?? 0))).toBe(true);
    },
    60_000,
  );
});

/** OR-Library's set cover: rows, columns, costs, then for each row how many columns serve it and which. */
function covering(name: string) {
  const numbers = textOf('setcover', name).trim().split(/\s+/).map(Number);
  const [rows = 0, columns = 0] = numbers;
  const choices = Array.from({ length: columns }, (_, i) => ({ cost: numbers[2 + i] ?? 1, serves: [] as number[] }));
  let at = 2 + columns;
  for (let row = 0; row < rows; row++) {
    const many = numbers[at++] ?? 0;
    for (let k = 0; k < many; k++) choices[(numbers[at++] ?? 1) - 1]?.serves.push(row);
  }
  return { rows, choices };
}

// OR-Library (Beasley 1987; Balas and Ho 1980), weighted; optima as published.
describe.skipIf(!isHere)('set covers', () => {
  test.each(['scp41', 'scp42', 'scp44', 'scp45', 'scp47', 'scp48', 'scp49', 'scp61', 'scp62', 'scpe1'])(
    '%s',
    async (name) => {
      const { rows, choices } = covering(name);
      const { cost, proven } = await cheapestCover(rows, choices, 120_000);
      expect([cost, proven]).toEqual([optima.setcover_weighted?.[name], true]);
    },
    180_000,
  );
});
