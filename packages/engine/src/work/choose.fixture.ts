import { Rational } from '../number/rational.js';
import type { WorkOrder } from '../spec/order.js';
import { USUAL_CHANGES } from './changes.js';
import type { Operation } from './operation.js';
import { changeMinutes, type Setting, settingKey } from './setting.js';

const source = { uri: 'test:/plan', start: 0, end: 0 };
const none = { cabinet: '', parts: [] };
export const before: WorkOrder = { kind: 'before', first: none, next: none, source };
export const late: WorkOrder = { kind: 'late', parts: none, source };

/** Operations of which nothing counts but what the job asks of them. */
export const operations = (roles: readonly (readonly string[])[]): readonly Operation[] =>
  roles.map((own, number) => ({ number, roles: own }) as unknown as Operation);

export const setting = ([machine, depth, spacer, stop]: readonly number[]): Setting => ({
  machine: `machine ${machine}`,
  connector: 'biscuit',
  depth: Rational.of(10 + (depth ?? 0)),
  base: Rational.of(9),
  pose: { surface: 'edge', reference: 'down' },
  pattern: 'deep',
  lines: [],
  spacer: { kind: 'stock', stack: [Rational.of(spacer ?? 0)] },
  stop: stop === 0 ? undefined : Rational.of(stop ?? 0),
});

export type Pair = readonly [first: number, next: number];

/** The least cost over every order of the operations themselves and every way of each, one after the other. */
export function byTrying(ways: readonly (readonly Setting[])[], pairs: readonly Pair[]): number {
  const known = new Map<string, number>();
  const all = (1 << ways.length) - 1;
  const from = (done: number, last: Setting | undefined): number => {
    if (done === all) return 0;
    const key = `${done}; ${last && settingKey(last)}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let least = Number.POSITIVE_INFINITY;
    for (const [i, own] of ways.entries()) {
      if (done & (1 << i) || pairs.some(([first, next]) => next === i && !(done & (1 << first)))) continue;
      for (const way of own)
        least = Math.min(least, changeMinutes(USUAL_CHANGES, last, way).toNumber() + from(done | (1 << i), way));
    }
    known.set(key, least);
    return least;
  };
  return from(0, undefined);
}
