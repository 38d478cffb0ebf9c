import { say, type Text } from '../fit/text.js';
import type { Sag } from '../load/shelf.js';
import { assumptions, burden } from '../load/words.js';
import { Rational } from '../number/rational.js';
import type { Check, CheckContext } from './check.js';
import { alike } from './support/alike.js';
import { loadedShelves } from './support/loads.js';
import { partNames } from './support/names.js';

/** A shelf sags under what it carries by more than the shop lets pass. */
export const shelfSags: Check = {
  code: 'shelf-sags',
  severity: 'warning',
  *run(context) {
    const sagging = loadedShelves(context).filter(
      (shelf): shelf is Sag => shelf.kind === 'sag' && tooMuch(shelf) !== undefined,
    );
    const groups = alike(sagging, ({ part, first, gap, loads }) => [
      context.part(part)?.kind ?? part,
      first,
      gap.length,
      ...loads.map(({ id }) => id),
    ]);
    for (const group of groups) {
      const [shelf] = group;
      const over = tooMuch(shelf);
      const [load] = shelf.loads;
      if (!over || !load) continue;
      const parts = group.map(({ part }) => part);
      yield {
        message: say`${partNames(context, parts)} sags ${over.sag}${over.when} at the middle of its span of ${shelf.gap.length} under ${burden(shelf)}, and ${over.may} is let pass (an estimate: ${assumptions(shelf)})`,
        cure: cure(context, shelf),
        source: load.source,
        related: parts.slice(0, MOST).flatMap((id) => {
          const part = context.part(id);
          return part ? [{ message: say`${id} is declared here`, source: part.source }] : [];
        }),
        about: { parts, statement: load.id },
        data: { sag: over.sag.toString(), may: over.may.toString(), parts },
      };
    }
  },
};

/** Most related places. */
const MOST = 5;

/** By how much it sags, and what may be, where that is too much: at first, else in time. */
function tooMuch({
  first,
  inTime,
  may,
}: Sag): { readonly sag: Rational; readonly may: Rational; readonly when: string } | undefined {
  if (first.gt(may.first)) return { sag: first, may: may.first, when: '' };
  return inTime && may.inTime && inTime.gt(may.inTime) ? { sag: inTime, may: may.inTime, when: ' in time' } : undefined;
}

function cure(context: CheckContext, { longest, gap, beam, part }: Sag): Text {
  const [low, high] = gap.between;
  const shorter = longest
    ? say`Take a span of ${Rational.of(Math.floor(longest.value))} or less, as with an upright under it between ${low} and ${high}`
    : say`Stand an upright under it between ${low} and ${high}`;
  const material = context.part(part)?.material ?? 'it';
  return say`${shorter}, or a board thicker than ${beam.thickness} or stiffer than ${material}. Local codes and licensed practice come before this estimate.`;
}
