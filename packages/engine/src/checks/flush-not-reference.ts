import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { axisOf, opposite, type Side } from '../spec/sides.js';
import type { JointStatement } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { alike } from './support/alike.js';
import { type Milled, milledHalves } from './support/halves.js';
import { partNames } from './support/names.js';
import { thickest, thinnest } from './support/sheet.js';

/** A part is flush at one face and its slots are measured from the other, so the thickness of the sheet shows. */
export const flushNotReference: Check = {
  code: 'flush-not-reference',
  severity: 'warning',
  *run(context) {
    const found = [...milledHalves(context)].flatMap((milled) => {
      const flush = flushFace(context, milled);
      return flush === undefined ? [] : [{ ...milled, flush }];
    });
    for (const group of alike(found, ({ joint, flush, part }) => [joint.statement, flush, part.material])) {
      const [{ joint, half, flush }] = group;
      const parts = [...new Set(group.map(({ part }) => part.id))];
      const reference = half.from.side;
      yield {
        message: say`the ${flush} of ${partNames(context, parts)} is flush, and the slots are measured from the ${reference}: ${errorOf(context, group[0])} shows as a step at the ${flush}`,
        cure: say`Measure from the flush face: reference ${flush}; or take the reference out, which then follows the flush face.`,
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, slots: half.slots.map((slot) => slot.id), statement: joint.statement },
        data: { flush, reference },
      };
    }
  },
};

/** The face a joint's facts put flush, when it is the one the edge's slots are not measured from. */
function flushFace(context: CheckContext, { joint, half }: Milled): Side | undefined {
  const statement = context.statement(joint.statement);
  if (statement?.kind !== 'joint' || half.role !== 'edge' || half.part !== joint.entering || half.slots.length === 0)
    return undefined;
  const faces = flushSides(statement).filter((side) => axisOf(side) === axisOf(half.from.side));
  const other = opposite(half.from.side);
  return faces.includes(other) && !faces.includes(half.from.side) ? other : undefined;
}

const flushSides = ({ facts }: JointStatement): readonly Side[] =>
  facts.flatMap((fact) => (fact.kind === 'flush' ? fact.sides : fact.kind === 'flush with' ? [fact.side] : []));

function errorOf(context: CheckContext, { part }: Milled): Text {
  const thick = part.cutSize?.thickness;
  const plus = thick && thickest(context, part)?.sub(thick);
  const minus = thick && thinnest(context, part)?.sub(thick).neg();
  const most = plus && minus && Rational.max(plus, minus);
  return most && most.sign() > 0
    ? say`what a sheet of ${part.material} is off in thickness, up to ${most},`
    : say`what the sheet is off in thickness`;
}
