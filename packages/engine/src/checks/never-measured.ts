import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { thicknessInput } from '../sizes/thickness.js';
import { AXES, type Axis, dimensionOf, highSide, lowSide, thicknessAxis } from '../spec/sides.js';
import type { Material } from '../spec/stock.js';
import type { Check, CheckContext } from './check.js';
import { joined, partsInOrder } from './support/names.js';

/** Sizes rest on the thickness of a sheet that was not measured, in a shop that measures its sheets. */
export const neverMeasured: Check = {
  code: 'never-measured',
  severity: 'warning',
  *run(context) {
    const { materials } = context.spec.shop;
    if (context.spec.thickness !== 'measured') return;
    const used = [...new Set(context.spec.parts.map((part) => part.material))]
      .map((name) => materials.get(name))
      .filter((material) => material !== undefined && material.measured === undefined);
    if (used.length === 0 || ![...materials.values()].some((material) => material.measured !== undefined)) return;
    for (const material of used) {
      if (material === undefined) continue;
      const { name } = material;
      const sizes = restingOn(context, material);
      const first = partsInOrder(context).find((part) => part.material === name);
      if (sizes.length === 0 || !first) continue;
      const more = sizes.length > 3 ? say` and ${sizes.length - 3} more` : [];
      yield {
        message: say`sheets of ${name} are taken to be ${material.thickness.value} thick, as sold, and were never measured: ${joined(sizes.slice(0, 3), ', ')}${more}`,
        cure: say`Measure a sheet and write it in the material: measured ….`,
        source: first.source,
        related: [{ message: say`${name} has no measured thickness`, source: material.source }],
        about: {
          parts: partsInOrder(context)
            .filter((part) => part.material === name)
            .map((part) => part.id),
        },
        data: { material: name },
      };
    }
  },
};

/** Sizes that change with the sheet, other than its own thickness. */
function restingOn(context: CheckContext, material: Material): readonly Text[] {
  const { planes } = context.solved.system;
  const input = thicknessInput(material.name);
  return partsInOrder(context).flatMap((part) =>
    AXES.filter((axis) => axis !== thicknessAxis(part.attitude)).flatMap((axis: Axis): Text[] => {
      const [high, low] = [planes.side(part.id, highSide(axis)), planes.side(part.id, lowSide(axis))];
      if (high === undefined || low === undefined) return [];
      const terms = context.solved.solution.sensitivity([
        { unknown: high, coefficient: Rational.ONE },
        { unknown: low, coefficient: Rational.of(-1) },
      ]);
      const own = terms.find((term) => term.input === input);
      return own
        ? [say`the ${dimensionOf(axis)} of ${part.id} changes by ${times(own.coefficient)} what they are off`]
        : [];
    }),
  );
}

/** A factor in words; it is no length. */
function times(coefficient: Rational): string {
  const factor = coefficient.abs();
  if (factor.equals(Rational.ONE)) return 'just';
  return factor.equals(Rational.TWO) ? 'twice' : `${factor} times`;
}
