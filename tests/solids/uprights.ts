import {
  across,
  at,
  connect,
  fact,
  flush,
  flushWith,
  type Item,
  reference,
} from '../../packages/engine/src/testing/joint-items.js';
import { lines } from '../../packages/engine/src/testing/shop-builder.js';
import { cabinet, type SpecBuilder } from '../../packages/engine/src/testing/spec-builder.js';
import { mm } from './dice.js';
import { type Figures, type Odd, shopOf } from './stock.js';

export const HIGH = 400;
export const DEEP = 320;

/** Uprights side by side, each 300 from the next. */
export function uprights(f: Figures, names: readonly string[], odd?: Odd): SpecBuilder {
  const list = names.join(', ');
  const built = cabinet(shopOf(f, odd)).part(list, 'upright', 'board').of('height', HIGH, list).of('depth', DEEP, list);
  const [first = '', ...others] = names;
  others.forEach((name, i) => {
    built.between('width', 300, names[i] as string, name);
    built.place(name, flushWith('bottom', first)).place(name, flushWith('rear', first));
  });
  return built;
}

export const shelfAt = (z: number, c: number, by: string, ...row: readonly number[]): readonly Item[] => [
  fact(at('bottom', mm(z), 'above', 'lh.bottom')),
  flush('rear', 'front'),
  reference('bottom'),
  across(mm(c)),
  connect(by, lines(...row.map(mm))),
];

/** A row of two that keeps out of the way of whatever is aimed at. */
export const ROW = [110, 215] as const;
