import { list, say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis, dimensionOf, highSide, lowSide, thicknessAxis } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { backwards, notPositive } from './support/backwards.js';
import { changeThatMoves } from './support/change.js';
import { partNames } from './support/names.js';
import { squeezed } from './support/openings.js';
import { sourceOf } from './support/sources.js';

/** A part comes out with an extent of nothing or less. */
export const sizeNotPositive: Check = {
  code: 'size-not-positive',
  severity: 'error',
  *run(context) {
    const told = new Set(backwards(context).flatMap(({ parts, axis }) => parts.map((part) => `${part} ${axis}`)));
    for (const axis of AXES) {
      for (const [extent, parts] of alike(context, axis, told)) {
        const [first] = parts;
        if (first === undefined) continue;
        const { planes } = context.solved.system;
        const [high, low] = [planes.side(first, highSide(axis)), planes.side(first, lowSide(axis))];
        const change = changeThatMoves(context, high, low, extent.neg());
        const grows = changeThatMoves(context, high, low, Rational.ONE)?.by.sign() === 1;
        const part = context.part(first);
        yield {
          message: say`the ${dimensionOf(axis)} of ${partNames(context, parts)} comes out at ${extent}: ${reasonsOf(context, first, axis)}`,
          cure: change
            ? say`In ${change.number.statement.id}, write ${grows ? 'more' : 'less'} than ${change.number.written.value.add(change.by)}.`
            : say`Change the statements that give it, by more than ${extent.abs()}.`,
          source: part?.source ?? context.spec.nameSource,
          related: change
            ? [{ message: say`this number gives it`, source: sourceOf(context, change.number.statement.id) }]
            : [],
          about: { parts, statement: change?.number.statement.id },
          data: { extent: extent.toString() },
        };
      }
    }
  },
};

/** Parts that come out at nothing or less, by how much they come out at. */
function alike(
  context: CheckContext,
  axis: Axis,
  told: ReadonlySet<string>,
): readonly (readonly [Rational, readonly PartId[]])[] {
  const groups = new Map<string, [Rational, PartId[]]>();
  for (const id of notPositive(context.solved, axis)) {
    const extent = context.solved.extent(id, axis);
    const part = context.part(id);
    // A sheet's own thickness is the shop's matter.
    if (!extent || !part || thicknessAxis(part.attitude) === axis || told.has(`${id} ${axis}`)) continue;
    if (squeezed(context, id, axis)) continue;
    const group = groups.get(extent.toString());
    if (group) group[1].push(id);
    else groups.set(extent.toString(), [extent, [id]]);
  }
  return [...groups.values()];
}

/** What the size is made up of: "600 (width 600 over lh and rh), -17.7 (lh is as thick as birch18 (measured))". */
function reasonsOf(context: CheckContext, part: PartId, axis: Axis): Text {
  const { planes, equations } = context.solved.system;
  const high = planes.side(part, highSide(axis));
  const low = planes.side(part, lowSide(axis));
  if (high === undefined || low === undefined) return [];
  const terms = [
    { unknown: high, coefficient: Rational.ONE },
    { unknown: low, coefficient: Rational.of(-1) },
  ];
  const adds = context.solved.solution.explain(terms).flatMap(({ equation, multiplier }) => {
    const reason = equations[equation];
    const by = reason?.value.value.mul(multiplier);
    return !reason || !by || by.isZero() ? [] : [{ by, text: reason.text }];
  });
  if (adds.length === 0) return say`its two sides are one plane`;
  return list(adds.sort((a, b) => b.by.compare(a.by)).map(({ by, text }) => say`${by} (${text})`));
}
