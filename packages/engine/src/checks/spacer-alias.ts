import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Check } from './check.js';
import { partNames } from './support/names.js';
import { setbacks } from './support/setbacks.js';

/** Two lines lie as far apart as a setback or twice as far, so that the wrong set-up still goes together. */
export const spacerAlias: Check = {
  code: 'spacer-alias',
  severity: 'warning',
  *run(context) {
    const { step } = context.spec.shop.limits;
    for (const { joint, half, by, parts, spacer } of setbacks(context)) {
      if (spacer.kind === 'mark out') continue;
      const lines = half.slots.map((slot) => slot.fromZero);
      const pair = aliased(lines, by, step);
      if (!pair) continue;
      const { low, high, times } = pair;
      const twice = times === 2 ? ', twice the setback' : '';
      const wrong = times === 1 ? `without the spacer` : 'with the spacer on the wrong part';
      yield {
        message: say`lines ${low} and ${high} lie ${high.sub(low)} apart${twice}, and the setback of ${partNames(context, parts)} is ${by}: milled ${wrong}, slots of one part still meet slots of the other, and it goes together ${by.mul(Rational.of(times))} out of place`,
        cure: say`Move one of the two lines so that they are more than ${step} off ${by.mul(Rational.of(times))} apart.`,
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, slots: half.slots.map((slot) => slot.id), statement: joint.statement },
        data: { lines: [low.toString(), high.toString()], setback: by.toString() },
      };
    }
  },
};

function aliased(
  lines: readonly Rational[],
  setback: Rational,
  step: Rational,
): { readonly low: Rational; readonly high: Rational; readonly times: 1 | 2 } | undefined {
  for (const times of [1, 2] as const) {
    const wrong = setback.mul(Rational.of(times));
    const [rough, far] = [wrong.toNumber(), step.toNumber() + 1e-6];
    for (const low of lines) {
      const from = low.toNumber() + rough;
      const high = lines.find(
        (line) => Math.abs(line.toNumber() - from) <= far && line.gt(low) && line.sub(low).sub(wrong).abs().le(step),
      );
      if (high) return { low, high, times };
    }
  }
  return undefined;
}
