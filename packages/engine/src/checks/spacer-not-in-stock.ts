import { list, say, type Text } from '../fit/text.js';
import { searchStacks, worstOff } from '../joints/spacers.js';
import { Rational } from '../number/rational.js';
import type { Tolerance } from '../spec/input.js';
import { isHigh } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { type Change, changeData, changeThatMoves } from './support/change.js';
import { joined, partNames, partsInOrder } from './support/names.js';
import { betterDatum, type Setback, setbacks } from './support/setbacks.js';
import { rewrite } from './support/written.js';

/** No stack of the jig's spacers comes near enough to a setback. */
export const spacerNotInStock: Check = {
  code: 'spacer-not-in-stock',
  severity: 'error',
  *run(context) {
    const jig = context.spec.shop.jig;
    for (const setback of setbacks(context)) {
      if (!jig || setback.spacer.kind !== 'missing' || jig.spacers.length === 0) continue;
      if (!betterDatum(context, setback)) yield describe(context, setback, jig.spacers, jig.within ?? Rational.ZERO);
    }
  },
};

function describe(context: CheckContext, setback: Setback, stock: readonly Rational[], within: Rational): Found {
  const { joint, half, by, parts, spacer } = setback;
  const { tolerance } = spacer;
  const middle = by.add(tolerance.plus.sub(tolerance.minus).div(Rational.TWO));
  const pieces = searchStacks(middle, stock, () => false).nearest?.pieces ?? [];
  const stack = Rational.sum(pieces);
  const off = worstOff(stack.sub(by), tolerance);
  const change = changeFor(context, setback, stack, within);
  const made =
    pieces.length > 1
      ? say`${joined(
          pieces.map((piece) => [piece]),
          ' + ',
        )} = ${stack}`
      : say`${stack}`;
  const cures: Text[] = [];
  if (change)
    cures.push(say`${rewrite(change.number, change.by)} in ${change.number.statement.id}, so that ${made} is right`);
  cures.push(say`write "spacer cut" in this joint for a block of ${by}`, say`add a spacer that makes up ${by}`);
  const [first = [], ...rest] = cures;
  return {
    message: say`the setback of ${partNames(context, parts)} from the ${half.datum} is ${by}${spread(by, tolerance)}, and no stack of ${list([...stock].sort((a, b) => a.compare(b)))} comes within ${within}: the nearest, ${made}, may be ${off} off`,
    cure: say`${capital(list([first, ...rest], ', or '))}.`,
    source: joint.source,
    related: change
      ? [{ message: say`this number moves the setback by as much`, source: change.number.written.source }]
      : [],
    about: { parts, joint: joint.id, slots: half.slots.map((slot) => slot.id), statement: joint.statement },
    data: {
      setback: by.toString(),
      stack: pieces.map((piece) => piece.toString()),
      ...(change && changeData(change)),
    },
  };
}

/** " (21.7 to 21.9 as sheets vary)"; nothing without a tolerance. */
const spread = (by: Rational, { plus, minus }: Tolerance): Text =>
  plus.isZero() && minus.isZero() ? [] : say` (${by.sub(minus)} to ${by.add(plus)} as the sheets vary)`;

function capital(text: Text): Text {
  const [first, ...rest] = text;
  return typeof first === 'string' ? [first.charAt(0).toUpperCase() + first.slice(1), ...rest] : text;
}

/** The change in the text that makes the stack right for every sheet; undefined where none would. */
function changeFor(
  context: CheckContext,
  { joint, half, by, spacer }: Setback,
  stack: Rational,
  within: Rational,
): Change | undefined {
  const { plus, minus } = spacer.tolerance;
  if (plus.add(minus).gt(within.mul(Rational.TWO)) || stack.sign() <= 0) return undefined;
  const wanted = Rational.max(plus, minus).le(within) ? stack : stack.sub(plus.sub(minus).div(Rational.TWO));
  const { planes } = context.solved.system;
  const edge = partsInOrder(context).find(
    ({ id }) => joint.zero && context.solved.at(id, half.datum)?.equals(joint.zero),
  );
  const zero = edge && planes.side(edge.id, half.datum);
  const own = planes.side(half.part, half.datum);
  const change = wanted.sub(by);
  return isHigh(half.datum) ? changeThatMoves(context, zero, own, change) : changeThatMoves(context, own, zero, change);
}
