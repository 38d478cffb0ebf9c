import { list, say } from '../fit/text.js';
import type { Side } from '../spec/sides.js';
import type { BandStatement, PartId } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { alike, byId } from './support/alike.js';
import { milledHalves } from './support/halves.js';
import { partNames } from './support/names.js';

/** Slots are measured from a banded edge, and nothing says whether the band is on by then. */
export const bandedDatum: Check = {
  code: 'banded-datum',
  severity: 'warning',
  *run(context) {
    if (context.spec.milled.source) return;
    for (const group of alike(measuredFromBands(context), ({ statement }) => [statement.id])) {
      const [{ statement }] = group;
      const band = context.spec.shop.bands.get(statement.band);
      if (!band) continue;
      const parts = [...new Set(group.map(({ part }) => part))];
      const sides = [...new Set(group.map(({ side }) => side))];
      yield {
        message: say`slots of ${partNames(context, parts)} are measured from the ${list(sides)}, which ${statement.band} bands ${band.thickness.value} thick, and nothing says whether they are milled before or after: the band moves them by ${band.thickness.value}`,
        cure: say`Write "milled after banding" or "milled before banding" in the cabinet.`,
        source: statement.source,
        related: [...group]
          .sort((a, b) => byId(a.part, b.part))
          .slice(0, 3)
          .map(({ part, side, source }) => ({ message: say`the ${side} of ${part} is measured from here`, source })),
        about: { parts, statement: statement.id },
        data: { band: band.thickness.value.toString() },
      };
    }
  },
};

/** Every banded edge that a datum or a stop is put against. */
function measuredFromBands(context: CheckContext) {
  const bands = context.spec.statements.filter((statement): statement is BandStatement => statement.kind === 'band');
  if (bands.length === 0) return [];
  return [...milledHalves(context)].flatMap(({ joint, half }) => {
    const edges: readonly Side[] = half.stop ? [half.datum, half.stop.end] : [half.datum];
    return (half.slots.length === 0 ? [] : edges).flatMap((side) =>
      bands
        .filter(({ sides, parts }) => sides.includes(side) && parts.includes(half.part))
        .map((statement) => ({ statement, part: half.part satisfies PartId, side, source: joint.source })),
    );
  });
}
