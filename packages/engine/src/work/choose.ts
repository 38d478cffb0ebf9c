import { Rational } from '../number/rational.js';
import type { Precedence } from '../sequence/problem.js';
import type { Sequencer } from '../sequence/sequence.js';
import type { Changes } from '../spec/stock.js';
import { Budget } from './budget.js';
import { bySets, MOST_STEPS } from './by-sets.js';
import { forcedBy, forcedOfClasses } from './forced.js';
import { CHANGE_OVERS, changeMinutes, type Setting } from './setting.js';
import type { Stages } from './stages.js';
import { type Class, keyed, type Visit } from './visit.js';

/** Visits in the order they are made, and what the changes take. Neighbours with one setting are one set-up. */
export interface Chosen {
  readonly visits: readonly Visit[];
  /** Minutes. */
  readonly change: Rational;
  /** No choice and no order takes less, minutes. */
  readonly atLeast: Rational;
  readonly proven: boolean;
}

/** Choices that are tried one by one; where there are more, the best found is made better a setting at a time. */
const MOST_CHOICES = 64;

/** A job whose settings are chosen and put in order. */
interface Task {
  readonly stages: Stages;
  readonly changes: Changes;
  readonly sequence: Sequencer;
  readonly budget: Budget;
}

/**
 * The settings, one at least for each operation in its stage, that cost least to set up one after the other, and their
 * order, in which no stage comes before one it waits for. Since each thing that is changed costs by itself, a visit more
 * never makes an order cheaper: only choices from which nothing can be left out are tried. A visit next to another with
 * the same setting costs nothing, so a setting is set up again only where something must come between.
 * @param ways by operation, the settings it can be milled with, the one its joint asks for first
 * @param sequence puts set-ups in order
 * @param budget the time for all of it; what cannot be proven in it comes with the bound that can
 * @param mostSteps how much is tried set by set before it is left to `sequence`
 */
export async function cheapestSettings(
  ways: readonly (readonly Setting[])[],
  stages: Stages,
  changes: Changes,
  sequence: Sequencer,
  budget: Budget = new Budget(10_000),
  mostSteps = MOST_STEPS,
): Promise<Chosen> {
  const classes = classesOf(ways, stages);
  const small = bySets(
    classes,
    stages,
    (from, to) => inParts(changeMinutes(changes, from?.setting, to.setting)),
    mostSteps,
  );
  if (small) {
    const change = changeOf(small, changes);
    return { visits: small, change, atLeast: change, proven: true };
  }
  const task = { stages, changes, sequence, budget };
  const { choices, areAll } = choicesOf(classes);
  let { best, atLeast } = await bestOf(choices, task, areAll ? 0 : 2);
  const proven = () => ({ ...best, atLeast: best.change, proven: true });
  if (areAll && atLeast.ge(best.change)) return proven();
  // Of choices that are not all of them the bound says nothing of the others.
  if (!areAll) atLeast = forcedOfClasses(classes, changes);
  if (atLeast.ge(best.change)) return proven();
  atLeast = Rational.max(atLeast, await leastOfAll(classes, best.change, areAll ? 1 : 2, task));
  if (atLeast.ge(best.change)) return proven();
  if (!areAll) best = await bettered(best, classes, atLeast, task);
  return atLeast.ge(best.change) ? proven() : { ...best, atLeast, proven: false };
}

/**
 * The best of several choices, and what none of them undercuts. First each is put in a good order at once; then, the most
 * hopeful first, in its cheapest, as long as it may be cheaper than the best so far.
 * @param afterwards how many orders are still to be found when these are
 */
async function bestOf(
  choices: readonly (readonly Visit[])[],
  task: Task,
  afterwards: number,
): Promise<{ best: Chosen; atLeast: Rational }> {
  const quick: Sequencer = (cost, options) => task.sequence(cost, { ...options, quick: true });
  const begun = [];
  for (const visits of choices) {
    const forced = forcedBy(visits, task.changes);
    const first = await inOrder(visits, { ...task, sequence: quick, budget: new Budget(1) }, 1, forced);
    begun.push({ visits, forced, first, isOpen: !first.proven });
  }
  begun.sort((a, b) => a.first.change.compare(b.first.change) || a.forced.compare(b.forced));
  let best = begun[0]?.first ?? { visits: [], change: Rational.ZERO, atLeast: Rational.ZERO, proven: true };
  let atLeast = best.change;
  let open = begun.filter((one) => one.isOpen).length;
  for (const { visits, forced, first, isOpen } of begun) {
    let bound = Rational.max(forced, first.atLeast);
    if (isOpen && bound.lt(best.change)) {
      const tried = await inOrder(visits, task, open + afterwards, bound, best.change);
      if (tried.change.lt(best.change)) best = tried;
      bound = Rational.max(bound, tried.atLeast);
    }
    if (isOpen) open--;
    atLeast = Rational.min(atLeast, bound);
  }
  return { best, atLeast: Rational.min(atLeast, best.change) };
}

function classesOf(ways: readonly (readonly Setting[])[], stages: Stages): readonly Class[] {
  const classes = new Map<string, Class>();
  ways.forEach((own, number) => {
    const visits = own.map((setting): Visit => ({ setting, stage: stages.of[number] ?? 0 }));
    const one: Class = keyed(visits);
    if (one.size > 0) classes.set([...one.keys()].sort().join('\n'), one);
  });
  // Those with least choice first, so that what they need serves the others. One that offers all that another does is
  // served with it.
  const all = [...classes.values()].sort((a, b) => a.size - b.size);
  return all.filter((one, i) => !all.slice(0, i).some((other) => [...other.keys()].every((key) => one.has(key))));
}

/** Choices of settings that serve every class; all of those from which none can be left out are among them, if they are all. */
function choicesOf(classes: readonly Class[]): {
  readonly choices: readonly (readonly Visit[])[];
  readonly areAll: boolean;
} {
  const found = new Map<string, Class>();
  let areAll = true;
  const visit = (at: number, chosen: Class): void => {
    if (found.size >= MOST_CHOICES) {
      areAll = false;
      return;
    }
    const open = classes.findIndex((one, i) => i >= at && ![...one.keys()].some((key) => chosen.has(key)));
    const next = classes[open];
    if (!next) {
      found.set([...chosen.keys()].sort().join('\n'), chosen);
      return;
    }
    for (const [key, one] of next) visit(open + 1, new Map([...chosen, [key, one]]));
  };
  visit(0, new Map());
  return { choices: [...found.values()].map((chosen) => [...chosen.values()]), areAll };
}

/** Exchanges one visit at a time as long as that gains, until the best meets the bound or the time is up. */
async function bettered(start: Chosen, classes: readonly Class[], atLeast: Rational, task: Task): Promise<Chosen> {
  let best = start;
  const all = [...new Map(classes.flatMap((one) => [...one])).entries()];
  for (let gained = true; gained; ) {
    gained = false;
    for (const [i, [key, visit]] of all.entries()) {
      if (atLeast.ge(best.change)) return best;
      if (task.budget.isSpent) {
        task.budget.leaveOut();
        return best;
      }
      const now = keyed(best.visits);
      if (now.has(key)) continue;
      const visits = withoutNeedless(classes, now, key, visit);
      const forced = forcedBy(visits, task.changes);
      if (forced.ge(best.change)) continue;
      const tried = await inOrder(visits, task, all.length - i, forced, best.change);
      if (!tried.change.lt(best.change)) continue;
      best = tried;
      gained = true;
    }
  }
  return best;
}

/** With one visit more, and without those that are then not needed. */
function withoutNeedless(classes: readonly Class[], now: Class, key: string, visit: Visit): readonly Visit[] {
  const kept = new Map([...now, [key, visit]]);
  const serves = (chosen: Class) => classes.every((one) => [...one.keys()].some((own) => chosen.has(own)));
  for (const old of now.keys()) {
    const fewer = new Map(kept);
    fewer.delete(old);
    if (serves(fewer)) kept.delete(old);
  }
  return [...kept.values()];
}

/** Minutes as whole thousandths, so that the solver reckons with whole numbers. */
const PARTS = Rational.of(1000);
const inParts = (minutes: Rational): number => Math.round(minutes.mul(PARTS).toNumber());

/**
 * The cheapest order from an empty bench: a tour that starts and ends there, the way back free.
 * @param ofSo how many orders are still to be found, this one counted
 * @param atLeast what no order undercuts, minutes
 * @param below what is known to do as well; an order that does not do better need not be the cheapest
 */
async function inOrder(
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

const changeOf = (visits: readonly Visit[], changes: Changes): Rational =>
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
async function leastOfAll(
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
