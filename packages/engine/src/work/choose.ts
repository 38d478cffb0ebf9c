import { Rational } from '../number/rational.js';
import type { Sequencer } from '../sequence/sequence.js';
import type { Changes } from '../spec/stock.js';
import { Budget } from './budget.js';
import { bySets, MOST_STEPS } from './by-sets.js';
import { choicesOf, classesOf, withoutNeedless } from './choices.js';
import { forcedBy, forcedOfClasses } from './forced.js';
import { type Chosen, changeOf, inOrder, inParts, leastOfAll, type Task } from './in-order.js';
import { changeMinutes, type Setting } from './setting.js';
import type { Stages } from './stages.js';
import { type Class, keyed, type Visit } from './visit.js';

/** So few are settled each by itself before a bound is sought for all of them at once. */
const FEW_CHOICES = 3;

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
  const begun = await begin(choices, task);
  let best = begun[0]?.first ?? NOTHING;
  const proven = () => ({ ...best, atLeast: best.change, proven: true });
  let atLeast = forcedOfClasses(classes, changes);
  const bounded = async (ofSo: number) => {
    if (atLeast.lt(best.change)) atLeast = Rational.max(atLeast, await leastOfAll(classes, best.change, ofSo, task));
  };
  // One bound for all of many choices is sooner found than one for each.
  if (choices.length > FEW_CHOICES) await bounded(3);
  if (atLeast.ge(best.change)) return proven();
  const tried = await bestOf(begun, task, atLeast, areAll ? 0 : 1);
  best = tried.best;
  // Of choices that are not all of them the bound says nothing of the others.
  if (areAll) atLeast = Rational.max(atLeast, tried.atLeast);
  if (choices.length <= FEW_CHOICES) await bounded(areAll ? 1 : 2);
  if (atLeast.lt(best.change) && !areAll) best = await bettered(best, classes, atLeast, task);
  return atLeast.ge(best.change) ? proven() : { ...best, atLeast, proven: false };
}

const NOTHING: Chosen = { visits: [], change: Rational.ZERO, atLeast: Rational.ZERO, proven: true };

/** A choice that has been put in a good order at once. */
interface Begun {
  readonly visits: readonly Visit[];
  readonly first: Chosen;
}

/** Each choice in a good order, the most hopeful first. */
async function begin(choices: readonly (readonly Visit[])[], task: Task): Promise<readonly Begun[]> {
  const quick: Sequencer = (cost, options) => task.sequence(cost, { ...options, quick: true });
  const begun: (Begun & { readonly forced: Rational })[] = [];
  for (const visits of choices) {
    const forced = forcedBy(visits, task.changes);
    const first = await inOrder(visits, { ...task, sequence: quick, budget: new Budget(1) }, 1, forced);
    begun.push({ visits, forced, first: { ...first, atLeast: Rational.max(first.atLeast, forced) } });
  }
  return begun.sort((a, b) => a.first.change.compare(b.first.change) || a.forced.compare(b.forced));
}

/**
 * The best of several choices, and what none of them undercuts: one after the other in its cheapest order, as long as it may
 * be cheaper than the best so far.
 * @param atLeast what no choice undercuts
 * @param afterwards how many orders are still to be found when these are
 */
async function bestOf(
  begun: readonly Begun[],
  task: Task,
  atLeast: Rational,
  afterwards: number,
): Promise<{ readonly best: Chosen; readonly atLeast: Rational }> {
  let best = begun[0]?.first ?? NOTHING;
  let least = best.change;
  let open = begun.filter(({ first }) => !first.proven).length;
  for (const { visits, first } of begun) {
    let bound = first.atLeast;
    if (!first.proven && bound.lt(best.change) && atLeast.lt(best.change)) {
      const tried = await inOrder(visits, task, open + afterwards, bound, best.change);
      if (tried.change.lt(best.change)) best = tried;
      bound = Rational.max(bound, tried.atLeast);
    }
    if (!first.proven) open--;
    least = Rational.min(least, bound);
  }
  return { best, atLeast: Rational.min(least, best.change) };
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
