import type { FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { type Axis, dimensionOf } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { alike, byId } from './support/alike.js';
import { partNames } from './support/names.js';

/** A level part spans its longer way with its grain across the span. */
export const grainAcross: Check = {
  code: 'grain-across',
  severity: 'warning',
  *run(context) {
    const found = context.fit.parts.flatMap((part) => {
      if (part.attitude !== 'level' || part.grain === 'z') return [];
      if (!context.spec.shop.materials.get(part.material)?.grain) return [];
      const spans = spansOf(context, part);
      const [span] = spans;
      if (!span || spans.some(({ axis }) => axis === part.grain)) return [];
      const [long, short] = [part.extent[span.axis], part.extent[part.grain]];
      return long && short && long.gt(short) ? [{ part, span, long, short }] : [];
    });
    found.sort((a, b) => byId(a.part.id, b.part.id));
    for (const group of alike(found, ({ part, long, short }) => [part.kind, long, short])) {
      const [{ part, span, long, short }] = group;
      const parts = group.map((one) => one.part.id);
      yield {
        message: say`the grain of ${partNames(context, parts)} runs across the span of ${long}, along the ${dimensionOf(part.grain)} of ${short}: across the grain a sheet sags more and breaks sooner`,
        cure: say`Let the grain run along the span: grain ${dimensionOf(span.axis)}.`,
        source: part.source,
        related: [{ message: say`${part.id} spans from here`, source: span.source }],
        about: { parts, statement: span.statement },
        data: { grain: dimensionOf(span.axis) },
      };
    }
  },
};

/** The level axes on which a part is held at both ends. */
function spansOf(context: CheckContext, part: FittedPart) {
  const own = context.fit.joints
    .filter((joint) => joint.entering === part.id)
    .sort((a, b) => byId(a.statement, b.statement));
  return (['x', 'y'] as const).flatMap((axis: Axis) => {
    const held = own.filter((joint) => joint.axis === axis);
    const [first] = held;
    const ends = new Set(held.map((joint) => joint.enteringSide));
    return first && ends.size > 1 ? [{ axis, statement: first.statement, source: first.source }] : [];
  });
}
