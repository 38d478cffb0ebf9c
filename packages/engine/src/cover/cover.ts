import type { Highs } from 'highs';
import { solver } from '../sequence/solver.js';

/** One thing that can be chosen, and what it serves. */
export interface Choice {
  /** > 0. */
  readonly cost: number;
  /** Numbers of what it serves. */
  readonly serves: readonly number[];
}

export interface Cover {
  /** Indices of what is chosen, in order; empty where not all can be served. */
  readonly chosen: readonly number[];
  /** Infinite where not all can be served. */
  readonly cost: number;
  /** No choice that serves all costs less. */
  readonly lowerBound: number;
  readonly proven: boolean;
}

/**
 * The cheapest choice that serves everything from 0 to `count` − 1 (set cover). A greedy choice is made first (Chvátal
 * 1979), pruned, then closed in on in whole numbers.
 * @param timeLimitMs how long the solver may reckon, in milliseconds of its own
 * @throws RangeError when a cost is not above zero, or a choice serves what is not there
 */
export async function cheapestCover(count: number, choices: readonly Choice[], timeLimitMs = 10_000): Promise<Cover> {
  choices.forEach(({ cost, serves }, i) => {
    if (!(cost > 0 && Number.isFinite(cost))) throw new RangeError(`choice ${i} costs ${cost}; costs are above 0`);
    const wrong = serves.find((one) => !(Number.isInteger(one) && one >= 0 && one < count));
    if (wrong !== undefined) throw new RangeError(`choice ${i} serves ${wrong}, and there are only 0 to ${count - 1}`);
  });
  if (count === 0) return { chosen: [], cost: 0, lowerBound: 0, proven: true };
  const start = greedy(count, choices);
  const none = Number.POSITIVE_INFINITY;
  if (!start) return { chosen: [], cost: none, lowerBound: none, proven: true };
  return inWholeNumbers(await solver(), count, choices, start, timeLimitMs);
}

const costOf = (choices: readonly Choice[], chosen: readonly number[]): number =>
  chosen.reduce((sum, i) => sum + (choices[i]?.cost ?? 0), 0);

/** Always what serves most of what is left for its cost; then whatever is not needed is put back, the dearest first. */
function greedy(count: number, choices: readonly Choice[]): readonly number[] | undefined {
  const left = new Set(Array.from({ length: count }, (_, i) => i));
  const chosen: number[] = [];
  while (left.size > 0) {
    let [best, worth] = [-1, 0];
    choices.forEach(({ cost, serves }, i) => {
      const fresh = serves.reduce((sum, one) => sum + (left.has(one) ? 1 : 0), 0);
      if (fresh / cost > worth) [best, worth] = [i, fresh / cost];
    });
    const choice = choices[best];
    if (!choice) return undefined;
    chosen.push(best);
    for (const one of choice.serves) left.delete(one);
  }
  return pruned(choices, chosen);
}

function pruned(choices: readonly Choice[], chosen: readonly number[]): readonly number[] {
  const times = new Map<number, number>();
  const count = (i: number, by: number) => {
    for (const one of new Set(choices[i]?.serves)) times.set(one, (times.get(one) ?? 0) + by);
  };
  for (const i of chosen) count(i, 1);
  const kept = new Set(chosen);
  for (const i of [...chosen].sort((a, b) => (choices[b]?.cost ?? 0) - (choices[a]?.cost ?? 0))) {
    if (choices[i]?.serves.some((one) => times.get(one) === 1)) continue;
    kept.delete(i);
    count(i, -1);
  }
  return [...kept].sort((a, b) => a - b);
}

const NEAR = 1e-6;

function inWholeNumbers(
  highs: Highs,
  count: number,
  choices: readonly Choice[],
  start: readonly number[],
  timeLimitMs: number,
): Cover {
  const whole = choices.every(({ cost }) => Number.isInteger(cost));
  const starts = [0];
  const indices: number[] = [];
  for (const { serves } of choices) {
    indices.push(...new Set(serves));
    starts.push(indices.length);
  }
  const columns = choices.length;
  const model = highs.createModel();
  try {
    model.options.set({ output_flag: false, mip_rel_gap: 0, random_seed: 1, time_limit: timeLimitMs / 1000 });
    model.passModel({
      numCols: columns,
      numRows: count,
      colCost: Float64Array.from(choices, ({ cost }) => cost),
      colLower: new Float64Array(columns),
      colUpper: new Float64Array(columns).fill(1),
      rowLower: new Float64Array(count).fill(1),
      rowUpper: new Float64Array(count).fill(highs.infinity),
      matrix: {
        format: 'csc',
        numRows: count,
        numCols: columns,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: new Float64Array(indices.length).fill(1),
      },
      integrality: new Int32Array(columns).fill(highs.constants.variableType.integer),
    });
    const chosenAtFirst = new Set(start);
    model.setSolution({ colValue: Float64Array.from(choices, (_, i) => (chosenAtFirst.has(i) ? 1 : 0)) });
    model.run();
    const { colValue } = model.getSolution();
    const found = choices.flatMap((_, i) => ((colValue[i] ?? 0) > 0.5 ? [i] : []));
    const served = new Set(found.flatMap((i) => choices[i]?.serves ?? []));
    const better = served.size === count ? pruned(choices, found) : start;
    const chosen = costOf(choices, better) < costOf(choices, start) ? better : start;
    const cost = costOf(choices, chosen);
    const sure = Number(model.info.get('mip_dual_bound')) - NEAR * Math.max(1, cost);
    const lowerBound = Math.min(cost, Number.isFinite(sure) ? (whole ? Math.ceil(sure) : sure) : 0);
    const proven = lowerBound >= cost - 2 * NEAR * Math.max(1, cost);
    return { chosen, cost, lowerBound: proven ? cost : lowerBound, proven };
  } finally {
    model.dispose();
  }
}
