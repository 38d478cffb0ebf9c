import { Rational } from '../number/rational.js';
import type { Jig } from '../spec/stock.js';
import type { Operation } from './operation.js';
import { comesBefore, type Stages } from './stages.js';

/** Two operations whose pieces lie on the bed at once, one at each fence, and how often. */
export interface Beside {
  readonly left: Operation;
  readonly right: Operation;
  readonly times: number;
}

/**
 * Pieces that can lie beside each other: one whose datum goes to the left fence and one whose goes to the right one, if both
 * fit on the bed with their spacers and neither waits for the other. As many pairs as there can be: the longest piece is put with the longest that still fits beside it.
 */
export function besideEachOther(
  operations: readonly Operation[],
  jig: Jig | undefined,
  stages: Stages,
  countOf: (operation: Operation) => number = ({ count }) => count,
): readonly Beside[] {
  const bed = jig?.bed;
  if (!bed || !jig.fences.includes('left') || !jig.fences.includes('right')) return [];
  const waiting = (hand: 'left' | 'right') =>
    operations
      .flatMap((operation) =>
        operation.half.hand === hand && operation.along && !operation.half.turn
          ? [{ operation, takes: takes(operation, operation.along), left: countOf(operation) }]
          : [],
      )
      .sort((a, b) => b.takes.compare(a.takes) || a.operation.number - b.operation.number);
  const rights = waiting('right');
  const pairs: Beside[] = [];
  for (const one of waiting('left'))
    for (const other of rights) {
      const times = Math.min(one.left, other.left);
      if (times === 0 || !one.takes.add(other.takes).le(bed)) continue;
      if (waits(stages, one.operation, other.operation) || isOnePiece(one.operation, other.operation)) continue;
      one.left -= times;
      other.left -= times;
      pairs.push({ left: one.operation, right: other.operation, times });
    }
  return pairs;
}

/**
 * How much bed a piece takes with its spacer. Common practice, no source: on a bed of 900, sides of 560 and 320 lie beside
 * each other and two of 560 do not.
 */
const takes = ({ half: { spacer } }: Operation, along: Rational): Rational =>
  along.add(spacer.kind === 'stock' ? Rational.sum(spacer.stack) : spacer.width);

/** No piece lies beside itself. */
const isOnePiece = (a: Operation, b: Operation): boolean =>
  a.count === 1 &&
  b.count === 1 &&
  a.pieces.some(({ item, parts }) =>
    b.pieces.some((other) => other.item === item && parts.some((part) => other.parts.includes(part))),
  );

const waits = (stages: Stages, a: Operation, b: Operation): boolean =>
  comesBefore(stages, a, b) || comesBefore(stages, b, a);
