import type { FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import type { Rational } from '../number/rational.js';
import { pieceAxes } from '../parts/same.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, byId } from './support/alike.js';
import { partNames } from './support/names.js';

/** Two pieces of one material differ in size by so little that they are taken for one another. */
export const lookAlike: Check = {
  code: 'look-alike',
  severity: 'warning',
  *run(context) {
    const { alike: limit } = context.spec.shop.limits;
    const near = nearOthers(context.fit.parts, limit).sort((a, b) => byId(a.part.id, b.part.id));
    const pieces = alike(near, ({ part, size }) => [part.material, ...size]);
    for (const [i, first] of pieces.entries()) {
      for (const second of pieces.slice(i + 1)) {
        const apart = apartOf(first[0], second[0], limit);
        if (apart) yield describe(context, first, second, apart);
      }
    }
  },
};

interface Sized {
  readonly part: FittedPart;
  /** Finished length along the grain, width across it, thickness. */
  readonly size: readonly [Rational, Rational, Rational];
}

/** Parts that another is nearly as large as; the most, where nothing is, is told by doubles. */
function nearOthers(parts: readonly FittedPart[], limit: Rational): Sized[] {
  const sized = parts.flatMap((part) => {
    const size = sizeOf(part);
    return size ? [{ part, size, rough: size.map((length) => length.toNumber()) }] : [];
  });
  const far = limit.toNumber() * (1 + Number.EPSILON);
  return sized.filter((one) =>
    sized.some(
      (other) =>
        other.part.material === one.part.material &&
        one.rough.every((length, i) => Math.abs(length - (other.rough[i] as number)) <= far) &&
        apartOf(one, other, limit) !== undefined,
    ),
  );
}

function sizeOf(part: FittedPart): Sized['size'] | undefined {
  const { length, width, thickness } = pieceAxes(part);
  const [a, b, c] = [part.extent[length], part.extent[width], part.extent[thickness]];
  return a && b && c && part.box ? [a, b, c] : undefined;
}

/** By how much two pieces differ, when that is something and yet too little in every direction. */
function apartOf(a: Sized, b: Sized, limit: Rational): readonly Rational[] | undefined {
  if (a.part.material !== b.part.material || a.size.every((size, at) => size.equals(b.size[at] as Rational)))
    return undefined;
  const apart = a.size.map((size, at) => size.sub(b.size[at] as Rational).abs());
  return apart.every((by) => by.lt(limit)) ? apart : undefined;
}

function describe(
  context: CheckContext,
  first: readonly [Sized, ...Sized[]],
  second: readonly [Sized, ...Sized[]],
  apart: readonly Rational[],
): Found {
  const [a] = first;
  const [b] = second;
  const ids = (group: readonly Sized[]) => group.map(({ part }) => part.id);
  return {
    message: say`${partNames(context, ids(first))}, ${a.size[0]} x ${a.size[1]}, and ${partNames(context, ids(second))}, ${b.size[0]} x ${b.size[1]}, are nearly one size: by eye one is taken for the other`,
    cure: say`Make them one size, or at least ${context.spec.shop.limits.alike} different, or mark them when they are cut and say so here: allow look-alike "…".`,
    source: b.part.source,
    related: [{ message: say`${a.part.id}`, source: a.part.source }],
    about: { parts: [...ids(first), ...ids(second)] },
    data: { apart: apart.map((by) => by.toString()) },
  };
}
