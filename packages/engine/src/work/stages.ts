import type { FittedPart } from '../fit/fit.js';
import { namesPart, type WorkOrder } from '../spec/order.js';
import type { Operation } from './operation.js';

/**
 * Operations by what must be milled before them and after them: those of one stage wait for the same and are waited for
 * by the same, and none of them waits for another.
 */
export interface Stages {
  /** By operation, its stage. */
  readonly of: readonly number[];
  /** By stage, the stages that must be done before it, however far. */
  readonly before: readonly ReadonlySet<number>[];
}

/** What a part has to do with what the job asks: for each order, whether it comes first, next, or late. */
export function rolesOf(orders: readonly WorkOrder[], cabinet: string, part: FittedPart): readonly string[] {
  return orders.flatMap((order, i) => {
    if (order.kind === 'late') return namesPart(order.parts, cabinet, part) ? [LATE] : [];
    const first = namesPart(order.first, cabinet, part) ? [firstRole(i)] : [];
    return namesPart(order.next, cabinet, part) ? [...first, nextRole(i)] : first;
  });
}

/** However many statements say so, what comes late comes after all that does not. */
export const LATE = 'late';

/** What a part is called to which the order of that index gives the first place, or the second. */
export const firstRole = (order: number): string => `${order} first`;
export const nextRole = (order: number): string => `${order} next`;

/**
 * The stages of a job. An order that would close a ring with those before it cannot be kept and is left aside; the text
 * has its finding.
 */
export function stagesOf(operations: readonly Operation[], orders: readonly WorkOrder[]): Stages {
  const groups = new Map<string, number>();
  const roles: (readonly string[])[] = [];
  const group = operations.map((operation) => {
    const key = [...new Set(operation.roles)].sort().join('; ');
    const known = groups.get(key);
    if (known !== undefined) return known;
    groups.set(key, roles.length);
    roles.push(operation.roles);
    return roles.length - 1;
  });
  const before = beforeOf(roles, orders);
  return merged(group, before);
}

/** By group of operations with the same roles, the groups that come before it, however far. */
function beforeOf(roles: readonly (readonly string[])[], orders: readonly WorkOrder[]): Set<number>[] {
  let before = roles.map(() => new Set<number>());
  const has = (role: string, wanted: boolean) => roles.flatMap((own, i) => (own.includes(role) === wanted ? [i] : []));
  let lateDone = false;
  orders.forEach((order, i) => {
    if (order.kind === 'late' && lateDone) return;
    if (order.kind === 'late') lateDone = true;
    const [first, next] =
      order.kind === 'late' ? [has(LATE, false), has(LATE, true)] : [has(firstRole(i), true), has(nextRole(i), true)];
    const now = withOrder(before, first, next);
    if (now.every((earlier, one) => !earlier.has(one))) before = now;
  });
  return before;
}

/** Everything in `first`, and what comes before it, now comes before everything in `next`, and what comes after that. */
function withOrder(
  before: readonly ReadonlySet<number>[],
  first: readonly number[],
  next: readonly number[],
): Set<number>[] {
  const earlier = new Set(first.flatMap((one) => [one, ...(before[one] ?? [])]));
  const waits = (one: number) => next.some((other) => other === one || before[one]?.has(other));
  return before.map((own, one) => (waits(one) ? new Set([...own, ...earlier]) : new Set(own)));
}

/** Groups that wait for the same and are waited for by the same are one stage. */
function merged(group: readonly number[], before: readonly ReadonlySet<number>[]): Stages {
  const key = (one: number): string => {
    const after = before.flatMap((earlier, other) => (earlier.has(one) ? [other] : []));
    return `${[...(before[one] ?? [])].sort((a, b) => a - b).join(' ')}; ${after.join(' ')}`;
  };
  const stages = new Map<string, number>();
  const stageOf = before.map((_, one) => {
    const own = key(one);
    const stage = stages.get(own) ?? stages.size;
    stages.set(own, stage);
    return stage;
  });
  const merging = [...stages.values()].map(() => new Set<number>());
  before.forEach((earlier, one) => {
    for (const other of earlier) merging[stageOf[one] ?? 0]?.add(stageOf[other] ?? 0);
  });
  return { of: group.map((one) => stageOf[one] ?? 0), before: merging };
}

/** Whether one operation must be milled before another. */
export const comesBefore = ({ of, before }: Stages, first: Operation, next: Operation): boolean =>
  before[of[next.number] ?? -1]?.has(of[first.number] ?? -1) ?? false;
