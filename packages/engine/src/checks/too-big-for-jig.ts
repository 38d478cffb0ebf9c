import type { FittedJoint, FittedPart, Half } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { axisOf, dimensionOf } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { byId } from './support/alike.js';
import { partNames } from './support/names.js';

/** A part is longer, along the run of its slots, than the jig's bed with the spacer on it. */
export const tooBigForJig: Check = {
  code: 'too-big-for-jig',
  severity: 'error',
  *run(context) {
    const { jig } = context.spec.shop;
    if (!jig?.bed) return;
    for (const { joint, parts, length, spacer } of lying(context, jig.bed)) {
      const over = length.add(spacer).sub(jig.bed);
      if (over.sign() <= 0) continue;
      const plus = spacer.isZero() ? [] : say` and its spacer ${spacer}`;
      const names = partNames(
        context,
        parts.map((part) => part.id),
      );
      yield {
        message: say`the ${dimensionOf(joint.run ?? 'y')} of ${names} is ${length}${plus}, and the bed of ${jig.name} is ${jig.bed} long: ${over} too long to lie between its ends`,
        cure: say`Make it ${over} shorter, or mark the slots out by hand and say so here: allow too-big-for-jig "…".`,
        source: joint.source,
        related: [
          ...parts.map((part) => ({ message: say`${part.id}`, source: part.source })),
          { message: say`the bed of ${jig.name}`, source: jig.source },
        ],
        about: { parts: parts.map((part) => part.id), joint: joint.id, statement: joint.statement },
        data: { over: over.toString() },
      };
    }
  },
};

interface Lying {
  readonly joint: FittedJoint;
  readonly parts: FittedPart[];
  /** Along the run, as it lies at the bench. */
  readonly length: Rational;
  readonly spacer: Rational;
}

/** How the parts of joints that have one too long lie on the bed: once a part, run and spacer, like parts of one statement together. */
function lying(context: CheckContext, bed: Rational): readonly Lying[] {
  const found = new Map<string, Lying>();
  const told = new Set<string>();
  const over = context.fit.joints.filter((joint) => joint.halves.some((half) => isOver(context, joint, half, bed)));
  for (const joint of over.sort((a, b) => byId(a.id, b.id))) {
    for (const half of joint.halves) {
      const part = context.part(half.part);
      const length = part && joint.run && lengthAtBench(context, part, joint, half);
      if (!part || !length) continue;
      const spacer = Rational.max(half.setback, Rational.ZERO);
      const own = `${part.id}\n${joint.run}\n${spacer}`;
      if (told.has(own)) continue;
      told.add(own);
      const key = `${joint.statement}\n${joint.run}\n${length}\n${spacer}`;
      const like = found.get(key);
      if (like) like.parts.push(part);
      else found.set(key, { joint, parts: [part], length, spacer });
    }
  }
  return [...found.values()];
}

function isOver(context: CheckContext, joint: FittedJoint, half: Half, bed: Rational): boolean {
  const part = context.part(half.part);
  const length = part && lengthAtBench(context, part, joint, half);
  return length?.add(half.setback).gt(bed) ?? false;
}

function lengthAtBench(context: CheckContext, part: FittedPart, joint: FittedJoint, half: Half): Rational | undefined {
  const extent = joint.run && part.extent[joint.run];
  // Slots along a cant are marked out: no edge of the part stands square to them.
  if (!extent || half.slots.length === 0 || half.turn) return undefined;
  if (context.fit.milled === 'after banding') return extent;
  const bands = part.bands.filter(({ side }) => axisOf(side) === joint.run);
  return extent.sub(Rational.sum(bands.map((band) => band.thickness)));
}
