import type { FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import type { Rational } from '../number/rational.js';
import { pieceAxes } from '../parts/same.js';
import type { Check } from './check.js';
import { alike } from './support/alike.js';
import { partNames, partsInOrder } from './support/names.js';

/** Two pieces of one material differ in size by so little that they are taken for one another. */
export const lookAlike: Check = {
  code: 'look-alike',
  severity: 'warning',
  *run(context) {
    const { alike: limit } = context.spec.shop.limits;
    const sized = partsInOrder(context).flatMap((part) => {
      const size = sizeOf(part);
      return size ? [{ part, size }] : [];
    });
    const pieces = alike(sized, ({ part, size }) => [part.material, ...size]);
    for (const [i, first] of pieces.entries()) {
      for (const second of pieces.slice(i + 1)) {
        const [a] = first;
        const [b] = second;
        if (a.part.material !== b.part.material) continue;
        const apart = a.size.map((size, at) => size.sub(b.size[at] as Rational).abs());
        if (apart.some((by) => by.ge(limit))) continue;
        const ids = (group: typeof first) => group.map(({ part }) => part.id);
        yield {
          message: say`${partNames(context, ids(first))} is ${a.size[0]} x ${a.size[1]}, ${partNames(context, ids(second))} is ${b.size[0]} x ${b.size[1]}: by eye one is taken for the other`,
          cure: say`Make them one size, or more than ${limit} different, or mark them when they are cut and say so here: allow look-alike "…".`,
          source: b.part.source,
          related: [{ message: say`${a.part.id}`, source: a.part.source }],
          about: { parts: [...ids(first), ...ids(second)] },
          data: { apart: apart.map((by) => by.toString()) },
        };
      }
    }
  },
};

/** Finished length along the grain, width across it, thickness. */
function sizeOf(part: FittedPart): readonly [Rational, Rational, Rational] | undefined {
  const { length, width, thickness } = pieceAxes(part);
  const [a, b, c] = [part.extent[length], part.extent[width], part.extent[thickness]];
  return a && b && c && part.box ? [a, b, c] : undefined;
}
