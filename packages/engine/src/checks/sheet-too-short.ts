import type { FittedPart } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { pieceAxes } from '../parts/same.js';
import { dimensionOf } from '../spec/sides.js';
import type { Material } from '../spec/stock.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, byId } from './support/alike.js';
import { partNames } from './support/names.js';

/** A piece is longer or wider than the sheet it is cut from. */
export const sheetTooShort: Check = {
  code: 'sheet-too-short',
  severity: 'error',
  *run(context) {
    const cut = context.fit.parts
      .filter((part) => sheetsOf(context, part.material).some((from) => tooShort(context, [part], part, from)))
      .sort((a, b) => byId(a.id, b.id));
    for (const group of alike(cut, (part) => [part.kind, part.cutSize?.length, part.cutSize?.width])) {
      const [part] = group;
      for (const from of sheetsOf(context, part.material)) {
        const found = tooShort(context, group, part, from);
        if (found) yield found;
      }
    }
  },
};

/** A sheet that pieces are cut from, and how much larger than finished. */
interface From {
  readonly sheet: Material;
  readonly oversize: Rational;
}

/** The sheets a material is cut from: its own, or those of its layers, which are cut larger. */
function sheetsOf(context: CheckContext, name: string): readonly From[] {
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
  { sheet: material, oversize }: From,
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
  const words = material.grain ? [' along the grain', ' across the grain'] : ['', ''];
  const trouble: Text = length.gt(along)
    ? say`${length} long${words[0] ?? ''}${extra}, and a sheet of ${material.name} is ${along} long that way`
    : say`${width} wide${words[1] ?? ''}${extra}, and a sheet of ${material.name} is ${across} wide that way`;
  const turn = turned ? say`, or turn the grain: grain ${dimensionOf(pieceAxes(part).width)}` : [];
  const ids = parts.map(({ id }) => id);
  return {
    message: say`${partNames(context, ids)} ${ids.length === 1 ? 'is' : 'are'} cut ${trouble}`,
    cure: say`Make it ${length.gt(along) ? length.sub(along) : width.sub(across)} smaller that way${turn}, or cut it from a larger sheet.`,
    source: part.source,
    related: [
      { message: say`a sheet of ${material.name} is ${sheet.length} x ${sheet.width}`, source: material.source },
    ],
    about: { parts: ids },
    data: { length: length.toString(), width: width.toString() },
  };
}
