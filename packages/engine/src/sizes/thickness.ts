import { constant, ofInput, plus, type Quantity } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import type { Spec } from '../spec/spec.js';
import type { Material } from '../spec/stock.js';

/** Id of the input fact that a material's thickness is. */
export const thicknessInput = (material: string): string => `thickness ${material}`;

/** The thickness sizes are worked from, mm: the measured one when it is wanted and known, else the nominal. */
export function workingThickness(material: Material, spec: Spec): Rational {
  return spec.thickness === 'measured' && material.measured ? material.measured.value : material.thickness.value;
}

/**
 * A material's thickness as a quantity. One glued up from layers depends on each layer's sheet, so that two
 * layers of one sheet stray together; a measurement of its own takes the place of its layers'.
 */
export function thicknessOf(spec: Spec, name: string, within: ReadonlySet<string> = new Set()): Quantity {
  const material = spec.shop.materials.get(name);
  if (!material || within.has(name)) return constant(Rational.ZERO);
  const own = ofInput(thicknessInput(name), workingThickness(material, spec));
  if (!material.layers || material.layers.length === 0) return own;
  const seen = new Set([...within, name]);
  const layers = material.layers.map((layer) => thicknessOf(spec, layer, seen)).reduce(plus);
  return layers.value.equals(own.value) ? layers : own;
}
