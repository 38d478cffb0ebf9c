import { Rational } from '../number/rational.js';
import { type Axis, axisOf } from '../spec/sides.js';
import type { Shop } from '../spec/stock.js';
import { furthestIn, type Reckoning } from '../tolerance/judge.js';
import { halvesOf, type Operation, type WorkItem } from './operation.js';

/**
 * What is left of the step that the shop lets pass, once everything that may be off along an axis at the joints of an
 * operation is taken from it, mm; the least over all of them, below zero where they are beyond it already.
 */
export function roomAt(
  operation: Operation,
  shop: Shop,
  items: readonly WorkItem[],
  reckoning: Reckoning,
  axis: Axis,
): Rational {
  const rooms = halvesOf(operation, items).flatMap(({ result, joint }) =>
    result.errors(joint.id).flatMap(({ kind, side, adds }) => {
      if (kind === 'gap' || axisOf(side) !== axis) return [];
      const { value, error } = furthestIn(adds, reckoning);
      return [shop.limits.step.sub(Rational.of(Math.ceil((value + error) * 1_000_000 - 1e-3), 1_000_000))];
    }),
  );
  return Rational.min(shop.limits.step, ...rooms);
}

/** The same along the run of the operation. */
export const roomAlong = (
  operation: Operation,
  shop: Shop,
  items: readonly WorkItem[],
  reckoning: Reckoning,
): Rational => roomAt(operation, shop, items, reckoning, axisOf(operation.half.datum));
