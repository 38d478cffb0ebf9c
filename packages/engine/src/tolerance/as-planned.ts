import type { Bounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Spec } from '../spec/spec.js';
import { withEntries } from '../spec/with-entries.js';
import type { Contributor } from './contributor.js';
import { CURVE_ERROR } from './judge.js';
import type { Batch } from './measured.js';
import { reckon } from './reckon.js';
import { type Result, resultsOf } from './results.js';
import type { Tried } from './tried.js';

/** Something that comes out otherwise when a cabinet is cut and milled to figures of another batch, mm: exact for sums. */
export interface Moved {
  readonly result: Result;
  readonly by: Rational | Bounded;
}

/**
 * What becomes of a cabinet that is made from another batch and cut and milled as it was planned: what thickness has
 * not dropped out of.
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
  const changeOf = ({ sheet }: Contributor): Rational =>
    (sheet === undefined ? undefined : changes.get(sheet)) ?? Rational.ZERO;
  return resultsOf(reckon({ ...spec, shop })).flatMap((result) => {
    const by = movedBy(result.adds, changeOf);
    return by ? [{ result, by }] : [];
  });
}

function movedBy(adds: Tried, changeOf: (of: Contributor) => Rational): Rational | Bounded | undefined {
  if ('stack' in adds) {
    const by = Rational.sum(adds.stack.terms.map(({ of, coefficient }) => changeOf(of).mul(coefficient)));
    return by.isZero() ? undefined : by;
  }
  const { of, at } = adds.curve;
  const value = at(of.map((one) => changeOf(one).toNumber())) - at(of.map(() => 0));
  return Math.abs(value) <= 2 * CURVE_ERROR ? undefined : { value, error: 2 * CURVE_ERROR };
}
