import { Rational } from '../number/rational.js';
import { workingThickness } from '../sizes/thickness.js';
import type { Toleranced } from '../spec/input.js';
import type { Spec } from '../spec/spec.js';

/** One sheet of what a part is made of. */
export interface Sheet {
  readonly name: string;
  /** The thickness sizes are worked from, with its tolerance. */
  readonly thickness: Toleranced;
}

/**
 * The sheets a material is made of: itself, or its layers from outside to outside; a measurement of its own takes the
 * place of its layers'.
 */
export function sheetsOf(spec: Spec, name: string, within: ReadonlySet<string> = new Set()): readonly Sheet[] {
  const material = spec.shop.materials.get(name);
  if (!material || within.has(name)) return [];
  const thickness = spec.thickness === 'measured' && material.measured ? material.measured : material.thickness;
  const own = [{ name, thickness }];
  if (!material.layers || material.layers.length === 0) return own;
  const inner = new Set([...within, name]);
  const layers = material.layers.flatMap((layer) => sheetsOf(spec, layer, inner));
  const sum = Rational.sum(layers.map((layer) => layer.thickness.value));
  return sum.equals(workingThickness(material, spec)) ? layers : own;
}
