import { Rational } from '../number/rational.js';
import type { Spec } from '../spec/spec.js';
import { withEntries } from '../spec/with-entries.js';
import type { Batch } from './measured.js';
import { reckon } from './reckon.js';
import { type Result, resultsOf } from './results.js';

/** Something that comes out otherwise when a cabinet is cut and milled to figures of another batch, mm. */
export interface Moved {
  readonly result: Result;
  readonly by: Rational;
}

/**
 * What becomes of a cabinet that is made from another batch and cut and milled as it was planned: what thickness has
 * not dropped out of. A mitre's heels and diagonals are left to the report of the batch itself.
 */
export function ifCutAsPlanned(spec: Spec, batch: Batch): readonly Moved[] {
  const changes = new Map<string, Rational>();
  const materials = new Map(spec.shop.materials);
  for (const [name, value] of batch) {
    const material = materials.get(name);
    if (!material) continue;
    const used = spec.thickness === 'measured' && material.measured ? material.measured : material.thickness;
    const by = value.sub(used.value);
    if (by.isZero()) continue;
    changes.set(name, by);
    // Every piece of the batch is to be a contributor, whatever tolerance it has.
    const loose = { ...used, tolerance: { plus: by.abs(), minus: by.abs() } };
    materials.set(name, { ...material, thickness: loose, measured: material.measured && loose });
  }
  if (changes.size === 0) return [];
  const shop = withEntries(spec.shop, { materials });
  return resultsOf(reckon({ ...spec, shop })).flatMap((result) => {
    if (!('stack' in result.adds)) return [];
    const parts = result.adds.stack.terms.map(({ of, coefficient }) => {
      const change = of.sheet === undefined ? undefined : changes.get(of.sheet);
      return change ? change.mul(coefficient) : Rational.ZERO;
    });
    const by = Rational.sum(parts);
    return by.isZero() ? [] : [{ result, by }];
  });
}
