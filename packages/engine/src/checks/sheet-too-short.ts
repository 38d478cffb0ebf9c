import type { FittedPart } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { pieceAxes } from '../parts/same.js';
import { dimensionOf } from '../spec/sides.js';
import type { Material } from '../spec/stock.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike } from './support/alike.js';
import { partNames, partsInOrder } from './support/names.js';

/** A piece is longer or wider than the sheet it is cut from. */
export const sheetTooShort: Check = {
  code: 'sheet-too-short',
  severity: 'error',
  *run(context) {
    const cut = partsInOrder(context).filter((part) => part.cutSize);
    for (const group of alike(cut, (part) => [part.kind, part.cutSize?.length, part.cutSize?.width])) {
      const [part] = group;
      for (const { sheet, oversize } of sheetsOf(context, part.material)) {
        const found = tooShort(context, group, part, sheet, oversize);
        if (found) yield found;
      }
    }
  },
};

/** The sheets a material is cut from: its own, or those of its layers, which are cut larger. */
function sheetsOf(
  context: CheckContext,
  name: string,
): readonly { readonly sheet: Material; readonly oversize: Rational }[] {
  const { materials } = context.spec.shop;
  const material = materials.get(name);
  if (!material) return [];
  const layers = [...new Set(material.layers ?? [])]
    .map((layer) => materials.get(layer))
    .filter((layer) => layer !== undefined);
  if (layers.length === 0) return [{ sheet: material, oversize: Rational.ZERO }];
  return layers.map((sheet) => ({ sheet, oversize: material.oversize ?? Rational.ZERO }));
}

function tooShort(
  context: CheckContext,
  parts: readonly FittedPart[],
  part: FittedPart,
  material: Material,
  oversize: Rational,
): Found | undefined {
  const { sheet } = material;
  if (!sheet || !part.cutSize) return undefined;
  const length = part.cutSize.length.add(oversize);
  const width = part.cutSize.width.add(oversize);
  const [along, across] = material.grain === 'width' ? [sheet.width, sheet.length] : [sheet.length, sheet.width];
  const turned = length.le(across) && width.le(along);
  if (length.le(along) && width.le(across)) return undefined;
  if (!material.grain && turned) return undefined;
  const extra = oversize.isZero() ? [] : say` with ${oversize} to trim`;
  const words = material.grain ? [' along the grain', ' across it'] : ['', ''];
  const trouble: Text = length.gt(along)
    ? say`${length} long${words[0] ?? ''}${extra}, and a sheet of ${material.name} is ${along} long that way`
    : say`${width} wide${words[1] ?? ''}${extra}, and a sheet of ${material.name} is ${across} wide that way`;
  const turn = turned ? say`, or turn the grain: grain ${dimensionOf(pieceAxes(part).width)}` : [];
  const ids = parts.map(({ id }) => id);
  return {
    message: say`${partNames(context, ids)} is cut ${trouble}`,
    cure: say`Make it ${length.gt(along) ? length.sub(along) : width.sub(across)} smaller that way${turn}, or cut it from a larger sheet.`,
    source: part.source,
    related: [
      { message: say`a sheet of ${material.name} is ${sheet.length} x ${sheet.width}`, source: material.source },
    ],
    about: { parts: ids },
    data: { length: length.toString(), width: width.toString() },
  };
}
