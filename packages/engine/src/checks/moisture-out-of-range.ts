import { list, say } from '../fit/text.js';
import { RULE_HOLDS } from '../load/movement.js';
import type { Check } from './check.js';

/** Moisture is written for which the rule of wood's movement does not hold. */
export const moistureOutOfRange: Check = {
  code: 'moisture-out-of-range',
  severity: 'warning',
  *run({ spec }) {
    for (const statement of spec.statements) {
      if (statement.kind !== 'moisture') continue;
      const { least, most, made } = statement;
      const outside = [least, most, made].filter(
        (percent) => percent.lt(RULE_HOLDS.least) || percent.gt(RULE_HOLDS.most),
      );
      if (outside.length === 0) continue;
      const low = String(RULE_HOLDS.least);
      const high = String(RULE_HOLDS.most);
      yield {
        message: say`${list(outside.map((percent) => `${Number(percent.toNumber().toFixed(2))} %`))} of moisture lies outside ${low} to ${high} %, where the rule of wood's movement holds, so no movement is reckoned`,
        cure: say`Write figures from ${low} to ${high} %, or allow this and reckon the movement by hand.`,
        source: statement.source,
        related: [],
        about: { statement: statement.id },
      };
    }
  },
};
