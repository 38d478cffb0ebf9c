import { Rational } from '../number/rational.js';
import { type Sequencer, sequenceSetups } from '../sequence/sequence.js';
import type { WorkOrder } from '../spec/order.js';
import type { Changes, Shop } from '../spec/stock.js';
import { type Alike, sparedBy } from './alike.js';
import type { Beside } from './beside.js';
import { Budget } from './budget.js';
import { USUAL_CHANGES } from './changes.js';
import { cheapestSettings } from './choose.js';
import { laidTogether } from './laid-together.js';
import { type Operation, operationsOf, type WorkItem } from './operation.js';
import type { FenceSpacers } from './rack.js';
import { type ChangeOver, changed, changeMinutes, type Setting, settingKey } from './setting.js';
import { comesBefore, firstRole, LATE, nextRole, type Stages, stagesOf } from './stages.js';
import { type Visit, visitKey } from './visit.js';
import { type Way, waysOf } from './ways.js';

/** Operations that wait for others, since the job asks for it. */
export interface Wait {
  readonly order: WorkOrder;
  /** Everything that is milled before, in whatever set-up. */
  readonly first: readonly Operation[];
  /** What waits for it, of the set-up that this is told of. */
  readonly next: readonly Operation[];
}

/** Everything that is milled with one setting. */
export interface SetUp {
  readonly setting: Setting;
  /** None before one it waits for. */
  readonly operations: readonly Operation[];
  readonly beside: readonly Beside[];
  /** Pieces of one operation that lie side by side at one fence. */
  readonly alike: readonly Alike[];
  /** Of the shop's spacers, what stands at which fence; undefined where none of them stands between fence and piece. */
  readonly spacers: FenceSpacers | undefined;
  /** Index of the last set-up before that had the same setting: it is set up again, since other work had to come between. */
  readonly again: number | undefined;
  readonly waits: readonly Wait[];
  /** What is changed before it, from the one before or from an empty bench. */
  readonly changed: readonly ChangeOver[];
  /** Minutes to change, and to mill. */
  readonly change: Rational;
  readonly mill: Rational;
  /** Pieces laid down, those beside each other counting once. */
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
  /** It is not proven since the time for it was up. */
  readonly ranOut: boolean;
  readonly mill: Rational;
  /** Minutes of changing cabinet by cabinet as they are written, and with like settings together in the order they come. */
  readonly naive: { readonly change: Rational; readonly setUps: number };
  readonly grouped: { readonly change: Rational; readonly setUps: number };
}

/** How a job is planned. */
export interface Planning {
  /** How long all of its orders may be reckoned on, ms; 10 000 unless said. */
  readonly timeLimitMs?: number | undefined;
  /** Milliseconds from any start; without it each order may take its share of the whole. */
  readonly clock?: (() => number) | undefined;
  /** Puts set-ups in order; given where that is to be done elsewhere, or to be stopped. */
  readonly sequence?: Sequencer | undefined;
  /** What the job asks to come before what; one that contradicts those before it is left aside. */
  readonly orders?: readonly WorkOrder[] | undefined;
}

/**
 * Plans a job: operations with one setting are one set-up; where one can be set up in several ways, the way is chosen that
 * costs least in all; the set-ups are put in the cheapest order, from an empty bench, in which nothing is milled before
 * what the job asks to come first.
 * @param items cabinets that share one shop; the first one's is taken
 */
export async function planWork(
  items: readonly WorkItem[],
  { timeLimitMs = 10_000, clock, sequence = sequenceSetups, orders = [] }: Planning = {},
): Promise<Plan> {
  const operations = operationsOf(items, orders);
  const stages = stagesOf(operations, orders);
  const shop = items[0]?.result.spec.shop;
  const changes = shop?.changes ?? USUAL_CHANGES;
  const ways = shop ? waysOf(operations, shop, items) : [];
  const budget = new Budget(timeLimitMs, clock);
  const { visits, change, atLeast, proven } = await cheapestSettings(
    ways.map((own) => own.map(({ setting }) => setting)),
    stages,
    changes,
    sequence,
    budget,
  );
  const work: Work = { operations, ways, stages, orders, changes, shop, items };
  const setUps = setUpsOf(visits, work);
  const written = oneByOne(items, work);
  return {
    setUps,
    changes,
    change,
    atLeast,
    proven,
    ranOut: !proven && budget.ranOut,
    mill: Rational.sum(setUps.map(({ mill }) => mill)),
    naive: counted(written, changes),
    grouped: counted(together(written), changes),
  };
}

/** A job while it is being planned. */
interface Work {
  readonly operations: readonly Operation[];
  readonly ways: readonly (readonly Way[])[];
  readonly stages: Stages;
  readonly orders: readonly WorkOrder[];
  readonly changes: Changes;
  readonly shop: Shop | undefined;
  readonly items: readonly WorkItem[];
}

/** One visit after the other, neighbours with one setting as one set-up. */
function setUpsOf(visits: readonly Visit[], work: Work): readonly SetUp[] {
  const { operations, ways, stages, changes } = work;
  const place = new Map(visits.map((visit, i): [string, number] => [visitKey(visit), i]));
  const of = visits.map((): Operation[] => []);
  for (const operation of operations) {
    const { number } = operation;
    // As its joint asks, if that is set up at all; else in the first other way that is.
    for (const { setting, half, otherwise } of ways[number] ?? []) {
      const at = place.get(visitKey({ setting, stage: stages.of[number] ?? 0 }));
      if (at === undefined) continue;
      of[at]?.push(otherwise ? { ...operation, half, otherwise, asked: operation.half } : operation);
      break;
    }
  }
  const runs: { readonly setting: Setting; readonly operations: Operation[] }[] = [];
  visits.forEach(({ setting }, i) => {
    const last = runs.at(-1);
    if (last && settingKey(last.setting) === settingKey(setting)) last.operations.push(...(of[i] ?? []));
    else runs.push({ setting, operations: of[i] ?? [] });
  });
  return runs.map(({ setting, operations: own }, i): SetUp => {
    const before = runs[i - 1]?.setting;
    const { beside, alike, spacers } = laidTogether(own, setting, work);
    const pieces = own.reduce((sum, { count }) => sum + count, 0);
    const loads = pieces - sparedBy(beside, alike);
    const slots = own.reduce((sum, { count, half }) => sum + count * half.slots.length, 0);
    const same = runs.slice(0, i).findLastIndex((run) => settingKey(run.setting) === settingKey(setting));
    return {
      setting,
      operations: own,
      beside,
      alike,
      spacers,
      again: same < 0 ? undefined : same,
      waits: waitsOf(own, work),
      changed: changed(before, setting),
      change: changeMinutes(changes, before, setting),
      mill: changes.load.mul(Rational.of(loads)).add(changes.slot.mul(Rational.of(slots))),
      loads,
      slots,
    };
  });
}

/** What of a set-up waits for other work, by what the job asks. */
function waitsOf(own: readonly Operation[], { operations, orders, stages }: Work): readonly Wait[] {
  let lateTold = false;
  return orders.flatMap((order, i): Wait[] => {
    if (order.kind === 'late' && lateTold) return [];
    if (order.kind === 'late') lateTold = true;
    const [first, next] =
      order.kind === 'late'
        ? [operations.filter(({ roles }) => !roles.includes(LATE)), own.filter(({ roles }) => roles.includes(LATE))]
        : [
            operations.filter(({ roles }) => roles.includes(firstRole(i))),
            own.filter(({ roles }) => roles.includes(nextRole(i))),
          ];
    const kept = first.length > 0 && next.length > 0 && next.every((one) => comesBefore(stages, first[0] ?? one, one));
    return kept ? [{ order, first, next }] : [];
  });
}

/**
 * Every cabinet by itself, its parts as they are written; what the job asks to come first is done first, even if that
 * means to go through all cabinets twice.
 */
function oneByOne(items: readonly WorkItem[], { operations, ways, stages }: Work): readonly Visit[] {
  let waiting = items.flatMap(({ count }, item) => {
    const own = operations.filter(({ pieces }) => pieces.some((one) => one.item === item));
    return Array.from({ length: count }, () => own).flat();
  });
  const left = stages.before.map((_, stage) => waiting.filter(({ number }) => stages.of[number] === stage).length);
  const visits: Visit[] = [];
  while (waiting.length > 0) {
    const later: Operation[] = [];
    for (const operation of waiting) {
      const stage = stages.of[operation.number] ?? 0;
      if ([...(stages.before[stage] ?? [])].some((earlier) => (left[earlier] ?? 0) > 0)) {
        later.push(operation);
        continue;
      }
      left[stage] = (left[stage] ?? 0) - 1;
      const [way] = ways[operation.number] ?? [];
      if (way) visits.push({ setting: way.setting, stage });
    }
    if (later.length === waiting.length) break;
    waiting = later;
  }
  return visits;
}

/** Like settings together, in the order in which they come first. */
const together = (visits: readonly Visit[]): readonly Visit[] => [
  ...new Map([...visits].map((visit): [string, Visit] => [visitKey(visit), visit])).values(),
];

function counted(visits: readonly Visit[], changes: Changes): Plan['naive'] {
  let setUps = 0;
  let last: Setting | undefined;
  let change = Rational.ZERO;
  for (const { setting } of visits) {
    if (last && settingKey(last) === settingKey(setting)) continue;
    change = change.add(changeMinutes(changes, last, setting));
    setUps++;
    last = setting;
  }
  return { change, setUps };
}
