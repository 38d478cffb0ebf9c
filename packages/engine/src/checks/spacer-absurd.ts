import { say } from '../fit/text.js';
import type { Check } from './check.js';
import { partNames } from './support/names.js';
import { betterDatum, setbacks } from './support/setbacks.js';

/** A spacer wider than 100 mm, or than half the contact, where the other side would need less than half of it. */
export const spacerAbsurd: Check = {
  code: 'spacer-absurd',
  severity: 'warning',
  *run(context) {
    for (const setback of setbacks(context)) {
      const { joint, half, by, parts, spacer } = setback;
      const better = betterDatum(context, setback);
      if (!better) continue;
      const there = better.by.isZero() ? 'none at all' : say`${better.by}`;
      yield {
        severity: spacer.kind === 'missing' ? 'error' : 'warning',
        message: say`measured from the ${half.datum}, the spacer for ${partNames(context, parts)} is ${by} wide; measured from the ${better.side} it would be ${there}`,
        cure: say`Write "datum ${better.side}" in this joint.`,
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, slots: half.slots.map((slot) => slot.id), statement: joint.statement },
        data: { datum: better.side },
      };
    }
  },
};
