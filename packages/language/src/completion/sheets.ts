import type { Toleranced } from '@dryfit/engine';
import type { Lengths } from '../hover/lengths.js';
import { type Offer, RANK } from './offer.js';
import type { Situation } from './situation.js';

/** Sheets for a part, those that this cabinet is made of first; for layers, all but the one that is being described. */
export function materialOffers({ around, file, entry, parts }: Situation, lengths: Lengths): Offer[] {
  const used = new Set([...parts.values()].map(({ material }) => material));
  const { materials } = around.shop(file);
  return [...around.names(file, 'Material')]
    .filter(([, node]) => node !== entry)
    .map(([name]) => {
      const material = materials.get(name);
      const detail = material && thick(material.thickness, material.measured, lengths);
      const rank = used.has(name) ? RANK.fits : RANK.also;
      return { label: name, kind: 'stock', rank, detail, names: { type: 'Material', name } };
    });
}

export function bandOffers({ around, file }: Situation, lengths: Lengths): Offer[] {
  const { bands } = around.shop(file);
  return [...around.names(file, 'Band').keys()].map((name) => {
    const band = bands.get(name);
    const detail = band && thick(band.thickness, undefined, lengths);
    return { label: name, kind: 'stock', rank: RANK.fits, detail, names: { type: 'Band', name } };
  });
}

function thick(thickness: Toleranced, measured: Toleranced | undefined, lengths: Lengths): string {
  const sold = `${lengths.unit(thickness.value)} thick`;
  return measured ? `${sold}, measured ${lengths.unit(measured.value)}` : sold;
}
