import { Rational } from '../number/rational.js';
import type { Precedence } from '../sequence/problem.js';
import type { Sequencer } from '../sequence/sequence.js';
import type { Changes } from '../spec/stock.js';
import type { Budget } from './budget.js';
import { CHANGE_OVERS, changeMinutes } from './setting.js';
import type { Stages } from './stages.js';
import type { Class, Visit } from './visit.js';

/** Visits in the order they are made, and what the changes take. Neighbours with one setting are one set-up. */
export interface Chosen {
  readonly visits: readonly Visit[];
  /** Minutes. */
  readonly change: Rational;
  /** No choice and no order takes less, minutes. */
  readonly atLeast: Rational;
  readonly proven: boolean;
}

/** A job whose settings are chosen and put in order. */
export interface Task {
  readonly stages: Stages;
  readonly changes: Changes;
  readonly sequence: Sequencer;
  readonly budget: Budget;
}

/** Minutes as whole thousandths, so that the solver reckons with whole numbers. */
const PARTS = Rational.of(1000);
export const inParts = (minutes: Rational): number => Math.round(minutes.mul(PARTS).toNumber());

/**
 * The cheapest order from an empty bench: a tour that starts and ends there, the way back free.
 * @param ofSo how many orders are still to be found, this one counted
 * @param atLeast what no order undercuts, minutes
 * @param below what is known to do as well; an order that does not do better need not be the cheapest
 */
export async function inOrder(
  visits: readonly Visit[],
  { stages, changes, sequence, budget }: Task,
  ofSo: number,
  atLeast: Rational,
  below?: Rational,
): Promise<Chosen> {
  const bench = [undefined, ...visits];
  const cost = bench.map((from) =>
    bench.map((to) => (to ? inParts(changeMinutes(changes, from?.setting, to.setting)) : 0)),
  );
  const precedences = precedencesOf(
    bench.map((visit) => visit?.stage),
    stages,
  );
  const known = { atLeast: surely(atLeast, visits.length, changes), ...(below ? { below: inParts(below) } : {}) };
  const found = await budget.order(sequence, cost, { cyclic: true, precedences, ...known }, ofSo);
  const inTurn = found.order.flatMap((i) => bench[i] ?? []);
  const change = changeOf(inTurn, changes);
  const bound = found.proven ? change : boundOf(found.lowerBound, below);
  return { visits: inTurn, change, atLeast: bound, proven: found.proven };
}

/** A bound in parts, less what rounding each step to a part may take from an order. */
function surely(atLeast: Rational, steps: number, changes: Changes): number {
  const isExact = CHANGE_OVERS.every((what) => changes[what].mul(PARTS).isInteger());
  return Math.floor(atLeast.mul(PARTS).toNumber()) - (isExact ? 0 : steps);
}

export const changeOf = (visits: readonly Visit[], changes: Changes): Rational =>
  Rational.sum(visits.map((to, i) => changeMinutes(changes, visits[i - 1]?.setting, to.setting)));

/** A bound that has come as far as what is known to do as well is just that. */
const boundOf = (parts: number, below: Rational | undefined): Rational =>
  below && parts >= inParts(below) ? below : inMinutes(parts);

const inMinutes = (parts: number): Rational => Rational.of(Math.max(0, Math.floor(parts))).div(PARTS);

/** Which of a list must come before which, by their stages; what has none comes when it will. */
function precedencesOf(list: readonly (number | undefined)[], { before }: Stages): Precedence[] {
  return list.flatMap((stage, then) => {
    const earlier = stage === undefined ? undefined : before[stage];
    if (!earlier || earlier.size === 0) return [];
    return list.flatMap((other, first): Precedence[] =>
      other !== undefined && earlier.has(other) ? [[first, then]] : [],
    );
  });
}

/**
 * What no choice undercuts: an order of the classes, none before one of a stage it waits for, where from one to the next
 * costs what it does between the two of their settings that lie nearest. Any choice in any order visits the classes at no
 * less.
 */
export async function leastOfAll(
  classes: readonly Class[],
  below: Rational,
  ofSo: number,
  { stages, changes, sequence, budget }: Task,
): Promise<Rational> {
  const bench: readonly (Class | undefined)[] = [undefined, ...classes];
  const least = (from: Class | undefined, to: Class | undefined): number => {
    if (!to) return 0;
    const starts = from ? [...from.values()] : [undefined];
    return Math.min(
      ...starts.flatMap((a) => [...to.values()].map((b) => inParts(changeMinutes(changes, a?.setting, b.setting)))),
    );
  };
  const cost = bench.map((from) => bench.map((to) => least(from, to)));
  const precedences = precedencesOf(
    bench.map((one) => one && [...one.values()][0]?.stage),
    stages,
  );
  const known = { below: inParts(below) };
  const { lowerBound } = await budget.order(sequence, cost, { cyclic: true, precedences, ...known }, ofSo);
  return boundOf(lowerBound, below);
}
