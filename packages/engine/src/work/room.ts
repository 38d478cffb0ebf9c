import { Rational } from '../number/rational.js';
import { type Axis, axisOf } from '../spec/sides.js';
import type { Shop } from '../spec/stock.js';
import { furthest, type Reckoning } from '../tolerance/judge.js';
import { type Operation, told, type WorkItem } from './operation.js';

/**
 * What is left of the step that the shop lets pass, once everything that may be off along an axis at the joints of an
 * operation is taken from it, mm; the least over all of them, below zero where they are beyond it already.
 * @param asked the operation as its joints ask for it
 */
export function roomAt(
  asked: Pick<Operation, 'joint' | 'half' | 'pieces'>,
  shop: Shop,
  items: readonly WorkItem[],
  reckoning: Reckoning,
  axis: Axis,
): Rational {
  const key = told(asked.joint, asked.half);
  const rooms = asked.pieces.flatMap(({ item, parts }) => {
    const result = items[item]?.result;
    const joints = result?.fit.joints.filter((other) =>
      other.halves.some((one) => parts.includes(one.part) && told(other, one) === key),
    );
    return (joints ?? []).flatMap(({ id }) =>
      (result?.errors(id) ?? []).flatMap(({ kind, side, off }) => {
        if (kind === 'gap' || axisOf(side) !== axis) return [];
        const { value, error } = furthest(off, reckoning);
        return [shop.limits.step.sub(Rational.of(Math.ceil((value + error) * 1_000_000 - 1e-3), 1_000_000))];
      }),
    );
  });
  return Rational.min(shop.limits.step, ...rooms);
}

/** The same along the run of the operation. */
export const roomAlong = (
  operation: Operation,
  shop: Shop,
  items: readonly WorkItem[],
  reckoning: Reckoning,
): Rational => {
  const asked = { ...operation, half: operation.asked ?? operation.half };
  return roomAt(asked, shop, items, reckoning, axisOf(operation.half.datum));
};
