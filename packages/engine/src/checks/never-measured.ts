import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { thicknessInput } from '../sizes/thickness.js';
import { AXES, type Axis, dimensionOf, highSide, lowSide, thicknessAxis } from '../spec/sides.js';
import type { Material } from '../spec/stock.js';
import type { Check, CheckContext } from './check.js';
import { joined, partsInOrder } from './support/names.js';

/** Sizes rest on a sheet's thickness, measured sheets are asked for, and this one has not been measured. */
export const neverMeasured: Check = {
  code: 'never-measured',
  severity: 'warning',
  *run(context) {
    if (context.spec.thickness !== 'measured') return;
    const used = new Set(context.spec.parts.map((part) => part.material));
    for (const name of used) {
      const material = context.spec.shop.materials.get(name);
      if (!material || material.measured) continue;
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

/** Sizes that change with the sheet, other than its own thickness: "the width of top by 2 for 1". */
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
        ? [
            say`each 0.1 it is off changes the ${dimensionOf(axis)} of ${part.id} by ${own.coefficient.abs().div(Rational.of(10))}`,
          ]
        : [];
    }),
  );
}
