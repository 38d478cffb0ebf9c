import { Rational } from '../number/rational.js';
import { type Sequencer, sequenceSetups } from '../sequence/sequence.js';
import type { Changes, Shop } from '../spec/stock.js';
import { type Beside, besideEachOther } from './beside.js';
import { USUAL_CHANGES } from './changes.js';
import { cheapestSettings } from './choose.js';
import { type Operation, operationsOf, type WorkItem } from './operation.js';
import { type ChangeOver, changed, changeMinutes, type Setting, settingKey, waysOf } from './setting.js';

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

/**
 * Plans a job: operations with one setting are one set-up; where one can be set up in several ways, the way is chosen that
 * costs least in all; the set-ups are put in the cheapest order, from an empty bench.
 * @param items cabinets that share one shop; the first one's is taken
 * @param timeLimitMs how long each order may be reckoned on, in milliseconds of the solver's own
 * @param sequence puts set-ups in order; given where that is to be done elsewhere, or to be stopped
 */
export async function planWork(
  items: readonly WorkItem[],
  timeLimitMs = 10_000,
  sequence: Sequencer = sequenceSetups,
): Promise<Plan> {
  const operations = operationsOf(items);
  const shop = items[0]?.result.spec.shop;
  const changes = shop?.changes ?? USUAL_CHANGES;
  const ways = shop ? waysOf(operations, shop) : [];
  const inTime: Sequencer = (cost, options) => sequence(cost, { ...options, timeLimitMs });
  const { settings, change, atLeast, proven } = await cheapestSettings(ways, changes, inTime);
  const setUps = setUpsOf(settings, operations, ways, changes, shop);
  return {
    setUps,
    changes,
    change,
    atLeast,
    proven,
    mill: Rational.sum(setUps.map(({ mill }) => mill)),
    naive: oneByOne(items, operations, ways, changes),
    grouped: together(operations, ways, changes),
  };
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
