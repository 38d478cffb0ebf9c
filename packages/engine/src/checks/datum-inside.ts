import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Check } from './check.js';
import { once } from './support/alike.js';
import { partNames } from './support/names.js';
import { aboutTrouble, troubled } from './support/trouble.js';

/** A part reaches beyond the plane its slots are measured from, so that no spacer can bring it there. */
export const datumInside: Check = {
  code: 'datum-inside',
  severity: 'error',
  *run(context) {
    for (const found of troubled(context, 'datum inside')) {
      const { joint, written } = found;
      const halves = context.fit.joints
        .filter((j) => j.statement === joint.statement)
        .flatMap((j) => j.halves.filter((half) => half.setback.sign() < 0));
      const [first] = halves;
      if (!first) continue;
      const most = Rational.max(...(halves.map((half) => half.setback.neg()) as [Rational, ...Rational[]]));
      const parts = once(halves.map((half) => half.part));
      yield {
        message: say`${partNames(context, parts)} ${parts.length > 1 ? 'reach' : 'reaches'} up to ${most} beyond the plane named as the ${first.datum} datum; slots are measured inward from it, and a fence cannot stand inside a part`,
        cure: say`Name the outermost ${first.datum} edge of the parts that meet here as the datum, or leave it to be found: datum ${first.datum}.`,
        source: written.datum?.source ?? joint.source,
        related: parts.flatMap((id) => {
          const part = context.part(id);
          return part ? [{ message: say`${id} is declared here`, source: part.source }] : [];
        }),
        about: aboutTrouble(found),
      };
    }
  },
};
