import { type Bounded, Rational, reckon, resultsOf, type Tried } from '@dryfit/engine';
import fc from 'fast-check';
import { fitText } from '../support/read.js';
import { type Corner, written } from './corner.js';
import { MadeUnit } from './made-unit.js';

/** What the shop of such a unit says of its bench. */
const LOOSE = `
tolerances {
  saw ± 0.2
  square 0.3 over 1000
  mitre ± 0.15 degrees
  fence ± 0.07
  spacer ± 0.03
  stop ± 0.06
  line ± 0.12
  cup 0.2
  dirt 0.05
}
`;
const JIG = `
jig longbed {
  bed 900
  fences left, right
  stop 0 to 760
  spacers 6, 10, 12, 19, 25 within 0.2
}
`;

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);

/** A cant by its two legs, or as a drawing tells it: by its length and its degrees from the front. */
const legs = fc.oneof(
  fc.record({ legX: tenths(180, 330), legY: tenths(180, 330) }),
  fc.record({ long: tenths(300, 420), degrees: fc.integer({ min: 33, max: 57 }) }).map(({ long, degrees }) => {
    const leg = (share: number) => Math.round(long * share * 10) / 10;
    return { legX: leg(Math.cos((degrees * Math.PI) / 180)), legY: leg(Math.sin((degrees * Math.PI) / 180)) };
  }),
);
export const units = fc
  .record({
    x: fc.constantFrom('left' as const, 'right' as const),
    y: fc.constantFrom('front' as const, 'rear' as const),
    wide: tenths(520, 800),
    deep: tenths(520, 800),
    inner: fc.boolean(),
    pose: fc.constantFrom('up' as const, 'down' as const),
  })
  .chain((corner) => legs.map((cut): Corner => ({ ...corner, ...cut })));
export type Shop = 'a jig' | 'none';
export const shops: fc.Arbitrary<Shop> = fc.constantFrom('a jig', 'none');

/** The unit as it is written in a shop that says how far off things come. */
export const looseText = (corner: Corner, shop: Shop): string =>
  written(corner)
    .replace('base to centre 9.5', 'base to centre 9.5 ± 0.1')
    .replace('cabinet Unit', `${shop === 'a jig' ? JIG : ''}${LOOSE}cabinet Unit`);

/** The same, fitted and reckoned: its results, and the unit as it is built with each thing as far off as its name is told. */
export async function built(corner: Corner, shop: Shop) {
  const { spec, fit } = await fitText(looseText(corner, shop));
  const results = resultsOf(reckon(spec));
  return { fit, results, unit: (off: (name: string) => number) => new MadeUnit(corner, fit, shop === 'a jig', off) };
}

/** What a result comes to with everything off by so much, by its name. */
export function amount(adds: Tried, off: (name: string) => number): number {
  if ('curve' in adds) return adds.curve.at(adds.curve.of.map(({ id }) => off(id)));
  const { shift, terms } = adds.stack;
  return terms.reduce((sum, { of, coefficient }) => sum + coefficient.toNumber() * off(of.id), shift.toNumber());
}

export const number = (length: Rational | Bounded): number =>
  length instanceof Rational ? length.toNumber() : length.value;
