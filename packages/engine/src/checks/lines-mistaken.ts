import type { FittedJoint, Slot } from '../fit/fit.js';
import { say } from '../fit/text.js';
import type { Rational } from '../number/rational.js';
import { type NearMarks, nearMarks, READ_APART } from '../work/strip.js';
import type { Check, CheckContext } from './check.js';
import { byId } from './support/alike.js';

/** A line from the left fence and one from the right fence lie so near to each other on the bed that one is taken for the other. */
export const linesMistaken: Check = {
  code: 'lines-mistaken',
  severity: 'warning',
  *run(context) {
    const { jig, limits } = context.spec.shop;
    const bed = jig?.bed;
    if (!bed || !jig.fences.includes('left') || !jig.fences.includes('right')) return;
    for (const { joint, left, right } of strips(context)) {
      if (left.length === 0 || right.length === 0) continue;
      const told = new Set<string>();
      for (const { apart, ...lines } of nearMarks(distances(left), distances(right), bed, limits.step)) {
        const { low, high } = inOrder(lines);
        if (told.has(`${low} ${high}`)) continue;
        told.add(`${low} ${high}`);
        const used = [...left, ...right].filter(({ fromZero }) => fromZero.equals(low) || fromZero.equals(high));
        const pattern = joint.pattern === undefined ? undefined : context.spec.shop.patterns.get(joint.pattern);
        yield {
          message: say`on the bed of ${bed} the lines ${low} and ${high}, each from another fence, lie only ${apart} apart, so that one is taken for the other`,
          cure: say`Move one of the two lines until they lie ${READ_APART} or more apart or come to one mark, or lay them along a bed of another length.`,
          source: joint.source,
          related: [
            ...(pattern ? [{ message: say`the pattern ${pattern.name}`, source: pattern.source }] : []),
            { message: say`the bed of ${jig.name}`, source: jig.source },
          ],
          about: {
            parts: [...new Set(used.map(({ part }) => part))],
            joint: joint.id,
            slots: used.map(({ id }) => id),
            statement: joint.statement,
          },
          data: { lines: [low.toString(), high.toString()], apart: apart.toString() },
        };
      }
    }
  },
};

/** Slots that are milled along one strip of lines, by the fence their piece lies at; the joint is the first of them. */
interface AlongStrip {
  readonly joint: FittedJoint;
  readonly left: Slot[];
  readonly right: Slot[];
}

/**
 * A pattern of fixed lines has one strip for all joints it serves. Lines that are spread, or written in a joint, have one for
 * each length they are laid out for.
 */
function strips({ fit, spec }: CheckContext): readonly AlongStrip[] {
  const found = new Map<string, Map<number, AlongStrip>>();
  // By their names, so that it is told the same way whatever is written first.
  for (const joint of [...fit.joints].sort((a, b) => byId(a.id, b.id)))
    for (const half of joint.halves) {
      // Slots along a cant are marked out on the piece, and lie at no fence.
      if (half.turn || half.slots.length === 0) continue;
      const pattern = joint.pattern === undefined ? undefined : spec.shop.patterns.get(joint.pattern);
      const length = pattern?.layout.kind === 'lines' ? 0 : lengthOf(joint);
      const key = joint.pattern ?? joint.statement;
      let own = found.get(key);
      if (!own) {
        own = new Map();
        found.set(key, own);
      }
      let strip = own.get(length);
      if (!strip) {
        strip = { joint, left: [], right: [] };
        own.set(length, strip);
      }
      strip[half.hand].push(...half.slots);
    }
  return [...found.values()].flatMap((own) => [...own.values()]);
}

/** mm, to tell lengths apart by. */
const lengthOf = ({ contact }: FittedJoint): number => (contact ? contact.hi.toNumber() - contact.lo.toNumber() : 0);

/** Each distance once, the least first; halves of one pattern have most of them in common. */
function distances(slots: readonly Slot[]): readonly Rational[] {
  const found = new Map<number, Rational[]>();
  for (const { fromZero } of slots) {
    const rough = fromZero.toNumber();
    const known = found.get(rough);
    if (!known) found.set(rough, [fromZero]);
    else if (!known.some((one) => one.equals(fromZero))) known.push(fromZero);
  }
  return [...found.values()].flat().sort((a, b) => a.compare(b));
}

const inOrder = ({ left, right }: Pick<NearMarks, 'left' | 'right'>) =>
  left.le(right) ? { low: left, high: right } : { low: right, high: left };
