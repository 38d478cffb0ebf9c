import type { Fit } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { axisOf, thicknessAxis, thirdAxis } from '../spec/sides.js';
import type { Band, Shop } from '../spec/stock.js';

/** The pieces of one band that a cabinet takes. */
export interface BandLength {
  readonly band: Band;
  readonly pieces: number;
  /** All pieces together as they are cut, mm. */
  readonly length: Rational;
}

/**
 * Lengths of band by kind, in the order of their names: each edge whole, as finished, and its band's oversize. Corners that
 * are cut off or notched are not taken from it. Parts whose size is not fixed are left out.
 */
export function bandLengths({ parts }: Pick<Fit, 'parts'>, shop: Pick<Shop, 'bands'>): readonly BandLength[] {
  const found = new Map<string, BandLength>();
  for (const part of parts)
    for (const { band: name, side } of part.bands) {
      const band = shop.bands.get(name);
      const axis = thirdAxis(axisOf(side), thicknessAxis(part.attitude));
      const edge = axis && part.extent[axis];
      if (!band || !edge) continue;
      const before = found.get(name);
      found.set(name, {
        band,
        pieces: (before?.pieces ?? 0) + 1,
        length: (before?.length ?? Rational.ZERO).add(edge).add(band.oversize ?? Rational.ZERO),
      });
    }
  return [...found.values()].sort((a, b) => (a.band.name < b.band.name ? -1 : 1));
}
