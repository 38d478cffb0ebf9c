import type { FittedPart } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import type { Axis } from '../spec/sides.js';
import type { Material, Shop } from '../spec/stock.js';

/** N/mm² in one GPa. */
const THOUSAND = Rational.of(1000);

/** What a part's material brings to bending along an axis, as far as the shop tells. */
export interface Board {
  /** N/mm². */
  readonly stiffness?: Rational | undefined;
  /** The span runs across the grain of its material. */
  readonly across: boolean;
  /** kg/m³. */
  readonly density?: Rational | undefined;
  readonly creep?: Rational | undefined;
}

/** Boards of layers that all have one figure have it as well; with different ones it is not known. */
export function boardOf(shop: Shop, part: FittedPart, span: Axis): Board {
  const material = shop.materials.get(part.material);
  if (!material) return { across: false };
  const layers = layersOf(shop, material);
  const common = (figure: (m: Material) => Rational | undefined): Rational | undefined => {
    const [first, ...others] = layers.map(figure);
    const own = figure(material);
    return own ?? (first && others.every((other) => other?.equals(first)) ? first : undefined);
  };
  const across =
    layers.some((layer) => layer.grain !== undefined || layer.movement !== undefined) && part.grain !== span;
  const stiffness = common((m) => (across ? m.stiffnessAcross : m.stiffness));
  return {
    stiffness: stiffness?.mul(THOUSAND),
    across,
    density: common((m) => m.density),
    creep: common((m) => m.creep),
  };
}

/** The sheets a material is glued up from; itself when it is one. Layers that name each other in a ring are none. */
function layersOf(shop: Shop, material: Material, above: readonly string[] = []): readonly Material[] {
  if (above.includes(material.name)) return [];
  if (!material.layers) return [material];
  return material.layers.flatMap((name) => {
    const layer = shop.materials.get(name);
    return layer ? layersOf(shop, layer, [...above, material.name]) : [];
  });
}
