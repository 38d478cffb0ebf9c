import { say, type Text } from '../fit/text.js';
import type { NotReckoned } from '../load/shelf.js';
import type { Check, CheckContext } from './check.js';
import { alike } from './support/alike.js';
import { loadedShelves } from './support/loads.js';
import { partNames } from './support/names.js';

/** A load is written for a part, and how much the part sags cannot be told. */
export const loadNotReckoned: Check = {
  code: 'load-not-reckoned',
  severity: 'warning',
  *run(context) {
    const found = loadedShelves(context).filter((shelf): shelf is NotReckoned => shelf.kind === 'not reckoned');
    for (const group of alike(found, ({ loads, why }) => [why, ...loads.map(({ id }) => id)])) {
      const [one] = group;
      const [load] = one.loads;
      if (!load) continue;
      const parts = group.map(({ part }) => part);
      const material = context.part(one.part)?.material ?? '';
      const [why, cure] = WORDS[one.why](material);
      yield {
        message: say`how much ${partNames(context, parts)} sags under ${load.text} cannot be told: ${why}`,
        cure,
        source: load.source,
        related: related(context, parts),
        about: { parts, statement: load.id },
        data: { why: one.why, material },
      };
    }
  },
};

const WORDS: Readonly<Record<NotReckoned['why'], (material: string) => readonly [Text, Text]>> = {
  'not level': () => [
    say`only parts that lie level are reckoned`,
    say`Take the load out, or write it for the level part that carries it.`,
  ],
  'not borne twice': () => [
    say`it is not borne at two places along its width or its depth`,
    say`Join it to what bears it at both ends, or from below.`,
  ],
  'no stiffness': (material) => [
    say`${material} tells no stiffness`,
    say`Write it in the braces of ${material}, as in stiffness 7 GPa, from the maker's data.`,
  ],
  'no stiffness across': (material) => [
    say`it spans across the grain, and ${material} tells no stiffness across`,
    say`Let its grain run along the span, or write it in the braces of ${material}, as in stiffness across 3.5 GPa.`,
  ],
};

/** Where the parts are declared; of very many the first. */
function related(context: CheckContext, parts: readonly string[]) {
  return parts.slice(0, MOST).flatMap((id) => {
    const part = context.part(id);
    return part ? [{ message: say`${id} is declared here`, source: part.source }] : [];
  });
}

const MOST = 5;
