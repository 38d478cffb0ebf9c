import { Rational } from '../number/rational.js';
import { sequenceSetups } from '../sequence/sequence.js';
import type { Changes, Shop } from '../spec/stock.js';
import { type Beside, besideEachOther } from './beside.js';
import { USUAL_CHANGES } from './changes.js';
import { type Operation, operationsOf, type WorkItem } from './operation.js';
import { type ChangeOver, changed, changeMinutes, type Setting, settingKey, settingsOf } from './setting.js';

/** Everything that is milled with one setting. */
export interface SetUp {
  readonly setting: Setting;
  readonly operations: readonly Operation[];
  readonly beside: readonly Beside[];
  /** What is changed before it, from the one before or from an empty bench. */
  readonly changed: readonly ChangeOver[];
  /** Minutes to change, and to mill. */
  readonly change: Rational;
  readonly mill: Rational;
  /** Pieces laid down, two beside each other counting once. */
  readonly loads: number;
  readonly slots: number;
}

/** The set-ups of a job, in the order in which they cost least to change. */
export interface Plan {
  readonly setUps: readonly SetUp[];
  readonly changes: Changes;
  /** Minutes of changing, in all; no order and no choice of settings takes less than `atLeast`. */
  readonly change: Rational;
  readonly atLeast: Rational;
  readonly proven: boolean;
  readonly mill: Rational;
  /** Minutes of changing cabinet by cabinet as they are written, and with like settings together in the order they come. */
  readonly naive: { readonly change: Rational; readonly setUps: number };
  readonly grouped: { readonly change: Rational; readonly setUps: number };
}

/** Choices of settings that are tried one by one. */
const MOST_CHOICES = 64;

/**
 * Plans a job: operations with one setting are one set-up; where one can be set up in several ways, the way is chosen that
 * costs least in all; the set-ups are put in the cheapest order, from an empty bench.
 * @param items cabinets that share one shop; the first one's is taken
 * @param timeLimitMs how long each order may be reckoned on, in milliseconds of the solver's own
 */
export async function planWork(items: readonly WorkItem[], timeLimitMs = 10_000): Promise<Plan> {
  const operations = operationsOf(items);
  const shop = items[0]?.result.spec.shop;
  const changes = shop?.changes ?? USUAL_CHANGES;
  const ways = waysOf(operations, shop);
  const choices = choicesOf(ways);
  let best: Ordered | undefined;
  for (const choice of choices.tried) {
    const ordered = await inOrder(choice, changes, timeLimitMs);
    if (!best || ordered.change.lt(best.change)) best = ordered;
  }
  const { settings, change, proven, atLeast } = best ?? NOTHING;
  const setUps = setUpsOf(settings, operations, ways, changes, shop);
  const bound = choices.all ? atLeast : await leastOfForced(choices.forced, changes, timeLimitMs);
  const least = Rational.min(change, Rational.max(bound, Rational.ZERO));
  return {
    setUps,
    changes,
    change,
    atLeast: least,
    proven: choices.all ? proven : least.equals(change),
    mill: Rational.sum(setUps.map(({ mill }) => mill)),
    naive: oneByOne(items, operations, ways, changes),
    grouped: together(operations, ways, changes),
  };
}

interface Ordered {
  readonly settings: readonly Setting[];
  readonly change: Rational;
  readonly atLeast: Rational;
  readonly proven: boolean;
}

const NOTHING: Ordered = { settings: [], change: Rational.ZERO, atLeast: Rational.ZERO, proven: true };

/** The settings that each operation can be milled with, by its number; the first is what its joint asks for. */
function waysOf(operations: readonly Operation[], shop: Shop | undefined): readonly (readonly Setting[])[] {
  if (!shop) return [];
  const stacks = new Map(
    operations.flatMap(({ half: { spacer } }): [string, readonly Rational[]][] =>
      spacer.kind === 'stock' ? [[spacer.stack.join('+'), spacer.stack]] : [],
    ),
  );
  const all = operations.map((operation) => settingsOf(operation, shop, [...stacks.values()]));
  // Another way is worth a thought only if some joint asks for it: a set-up of its own never gains.
  const asked = new Set(all.flatMap(([own]) => (own ? [settingKey(own)] : [])));
  return all.map((ways) => ways.filter((way, i) => i === 0 || asked.has(settingKey(way))));
}

interface Choices {
  /** Settings that cover every operation, each choice least: none can be left out. */
  readonly tried: readonly (readonly Setting[])[];
  /** Whether these are all the choices there are. */
  readonly all: boolean;
  /** Settings that no choice does without. */
  readonly forced: readonly Setting[];
}

/**
 * Since each thing changed costs by itself, a set-up more never makes an order cheaper: only choices from which nothing can
 * be left out need be tried, and what some operation cannot do without is in all of them.
 */
function choicesOf(ways: readonly (readonly Setting[])[]): Choices {
  const settings = new Map(ways.flatMap((own) => own.map((way): [string, Setting] => [settingKey(way), way])));
  const keys = ways.map((own) => new Set(own.map(settingKey)));
  const forced = new Set(keys.flatMap((own) => (own.size === 1 ? [...own] : [])));
  const open = keys.filter((own) => ![...own].some((key) => forced.has(key)));
  const found = new Map<string, ReadonlySet<string>>();
  let all = true;
  const visit = (at: number, chosen: ReadonlySet<string>): void => {
    if (found.size >= MOST_CHOICES) {
      all = false;
      return;
    }
    const next = open.slice(at).findIndex((own) => ![...own].some((key) => chosen.has(key)));
    if (next < 0) {
      found.set([...chosen].sort().join('\n'), chosen);
      return;
    }
    for (const key of open[at + next] ?? []) visit(at + next + 1, new Set([...chosen, key]));
  };
  visit(0, forced);
  const of = (chosen: Iterable<string>) => [...chosen].sort().flatMap((key) => settings.get(key) ?? []);
  return { tried: [...found.values()].map(of), all, forced: of(forced) };
}

/** Minutes as whole thousandths, so that the solver reckons with whole numbers. */
const PARTS = Rational.of(1000);
const inParts = (minutes: Rational): number => Math.round(minutes.mul(PARTS).toNumber());

/** The cheapest order from an empty bench: a tour that starts and ends there, the way back free. */
async function inOrder(settings: readonly Setting[], changes: Changes, timeLimitMs: number): Promise<Ordered> {
  const bench = [undefined, ...settings];
  const cost = bench.map((from) => bench.map((to) => (to ? inParts(changeMinutes(changes, from, to)) : 0)));
  const { order, lowerBound, proven } = await sequenceSetups(cost, { cyclic: true, timeLimitMs });
  const inTurn = order.flatMap((i) => bench[i] ?? []);
  const change = Rational.sum(inTurn.map((to, i) => changeMinutes(changes, inTurn[i - 1], to)));
  const atLeast = proven ? change : Rational.of(Math.max(0, Math.floor(lowerBound))).div(PARTS);
  return { settings: inTurn, change, atLeast, proven };
}

async function leastOfForced(forced: readonly Setting[], changes: Changes, timeLimitMs: number): Promise<Rational> {
  return (await inOrder(forced, changes, timeLimitMs)).atLeast;
}

function setUpsOf(
  settings: readonly Setting[],
  operations: readonly Operation[],
  ways: readonly (readonly Setting[])[],
  changes: Changes,
  shop: Shop | undefined,
): readonly SetUp[] {
  const place = new Map(settings.map((setting, i): [string, number] => [settingKey(setting), i]));
  const of = settings.map((): Operation[] => []);
  for (const operation of operations) {
    // As its joint asks, if that is set up at all; else in the first other way that is.
    const at = (ways[operation.number] ?? []).map((way) => place.get(settingKey(way))).find((i) => i !== undefined);
    if (at !== undefined) of[at]?.push(operation);
  }
  return settings.map((setting, i): SetUp => {
    const own = of[i] ?? [];
    const beside = besideEachOther(own, shop?.jig);
    const pieces = own.reduce((sum, { count }) => sum + count, 0);
    const loads = pieces - beside.reduce((sum, { times }) => sum + times, 0);
    const slots = own.reduce((sum, { count, half }) => sum + count * half.slots.length, 0);
    return {
      setting,
      operations: own,
      beside,
      changed: changed(settings[i - 1], setting),
      change: changeMinutes(changes, settings[i - 1], setting),
      mill: changes.load.mul(Rational.of(loads)).add(changes.slot.mul(Rational.of(slots))),
      loads,
      slots,
    };
  });
}

/** Every cabinet by itself, its parts as they are written. */
function oneByOne(
  items: readonly WorkItem[],
  operations: readonly Operation[],
  ways: readonly (readonly Setting[])[],
  changes: Changes,
): Plan['naive'] {
  const settings = items.flatMap(({ count }, item) => {
    const own = operations.flatMap(({ number, pieces }) => {
      const [way] = ways[number] ?? [];
      return way && pieces.some((one) => one.item === item) ? [way] : [];
    });
    return Array.from({ length: count }, () => own).flat();
  });
  return counted(settings, changes);
}

/** Like settings together, in the order in which they come. */
function together(
  operations: readonly Operation[],
  ways: readonly (readonly Setting[])[],
  changes: Changes,
): Plan['grouped'] {
  const settings = new Map<string, Setting>();
  for (const { number } of operations) {
    const [way] = ways[number] ?? [];
    if (way && !settings.has(settingKey(way))) settings.set(settingKey(way), way);
  }
  return counted([...settings.values()], changes);
}

function counted(settings: readonly Setting[], changes: Changes): Plan['naive'] {
  let setUps = 0;
  let last: Setting | undefined;
  let change = Rational.ZERO;
  for (const setting of settings) {
    if (last && settingKey(last) === settingKey(setting)) continue;
    change = change.add(changeMinutes(changes, last, setting));
    setUps++;
    last = setting;
  }
  return { change, setUps };
}
