import { Rational } from '../number/rational.js';
import type { Sequencer } from '../sequence/sequence.js';
import type { Changes } from '../spec/stock.js';
import { changeMinutes, type Setting, settingKey } from './setting.js';

/** Settings in the order they are set up, and what the changes take. */
export interface Chosen {
  readonly settings: readonly Setting[];
  /** Minutes. */
  readonly change: Rational;
  /** No choice and no order takes less, minutes. */
  readonly atLeast: Rational;
  readonly proven: boolean;
}

/** Choices that are tried one by one; where there are more, the best found is made better a setting at a time. */
const MOST_CHOICES = 64;

/**
 * The settings, one at least for each operation, that cost least to set up one after the other, and their order. Since each
 * thing that is changed costs by itself, a set-up more never makes an order cheaper: only choices from which nothing can be
 * left out are tried.
 * @param ways by operation, the settings it can be milled with, the one its joint asks for first
 * @param sequence puts set-ups in order
 */
export async function cheapestSettings(
  ways: readonly (readonly Setting[])[],
  changes: Changes,
  sequence: Sequencer,
): Promise<Chosen> {
  const classes = classesOf(ways);
  const { choices, areAll } = choicesOf(classes);
  let best: Chosen = { settings: [], change: Rational.ZERO, atLeast: Rational.ZERO, proven: true };
  let everyProven = true;
  for (const [i, choice] of choices.entries()) {
    const tried = await inOrder(choice, changes, sequence);
    everyProven &&= tried.proven;
    if (i === 0 || tried.change.lt(best.change)) best = tried;
  }
  if (areAll && everyProven) return { ...best, atLeast: best.change, proven: true };
  if (!areAll) best = await bettered(best, classes, changes, sequence);
  const atLeast = Rational.min(best.change, await leastOfAll(classes, changes, sequence));
  return { ...best, atLeast, proven: atLeast.equals(best.change) };
}

/** Operations that can be set up in the same ways are one class. */
type Class = ReadonlyMap<string, Setting>;

function classesOf(ways: readonly (readonly Setting[])[]): readonly Class[] {
  const classes = new Map<string, Class>();
  for (const own of ways) {
    const one: Class = new Map(own.map((way): [string, Setting] => [settingKey(way), way]));
    if (one.size > 0) classes.set([...one.keys()].sort().join('\n'), one);
  }
  // Those with least choice first, so that what they need serves the others.
  return [...classes.values()].sort((a, b) => a.size - b.size);
}

/** Choices of settings that serve every class; all of those from which none can be left out are among them, if they are all. */
function choicesOf(classes: readonly Class[]): {
  readonly choices: readonly (readonly Setting[])[];
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
    for (const [key, setting] of next) visit(open + 1, new Map([...chosen, [key, setting]]));
  };
  visit(0, new Map());
  return { choices: [...found.values()].map((chosen) => [...chosen.values()]), areAll };
}

/** Exchanges one setting at a time as long as that gains. */
async function bettered(
  start: Chosen,
  classes: readonly Class[],
  changes: Changes,
  sequence: Sequencer,
): Promise<Chosen> {
  let best = start;
  for (let gained = true; gained; ) {
    gained = false;
    for (const one of classes)
      for (const [key, setting] of one) {
        const now = new Map(best.settings.map((own): [string, Setting] => [settingKey(own), own]));
        if (now.has(key)) continue;
        const tried = await inOrder(withoutNeedless(classes, now, key, setting), changes, sequence);
        if (!tried.change.lt(best.change)) continue;
        best = tried;
        gained = true;
      }
  }
  return best;
}

/** With one setting more, and without those that are then not needed. */
function withoutNeedless(classes: readonly Class[], now: Class, key: string, setting: Setting): readonly Setting[] {
  const kept = new Map([...now, [key, setting]]);
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

/** The cheapest order from an empty bench: a tour that starts and ends there, the way back free. */
async function inOrder(settings: readonly Setting[], changes: Changes, sequence: Sequencer): Promise<Chosen> {
  const bench = [undefined, ...settings];
  const cost = bench.map((from) => bench.map((to) => (to ? inParts(changeMinutes(changes, from, to)) : 0)));
  const { order, lowerBound, proven } = await sequence(cost, { cyclic: true });
  const inTurn = order.flatMap((i) => bench[i] ?? []);
  const change = Rational.sum(inTurn.map((to, i) => changeMinutes(changes, inTurn[i - 1], to)));
  return { settings: inTurn, change, atLeast: proven ? change : inMinutes(lowerBound), proven };
}

const inMinutes = (parts: number): Rational => Rational.of(Math.max(0, Math.floor(parts))).div(PARTS);

/**
 * What no choice undercuts: an order of the classes, where from one to the next costs what it does between the two of their
 * settings that lie nearest. Any choice in any order visits the classes at no less.
 */
async function leastOfAll(classes: readonly Class[], changes: Changes, sequence: Sequencer): Promise<Rational> {
  const bench: readonly (Class | undefined)[] = [undefined, ...classes];
  const least = (from: Class | undefined, to: Class | undefined): number => {
    if (!to) return 0;
    const starts = from ? [...from.values()] : [undefined];
    return Math.min(...starts.flatMap((a) => [...to.values()].map((b) => inParts(changeMinutes(changes, a, b)))));
  };
  const cost = bench.map((from) => bench.map((to) => least(from, to)));
  const { lowerBound } = await sequence(cost, { cyclic: true });
  return inMinutes(lowerBound);
}
