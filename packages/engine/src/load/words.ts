import { list, say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Sag } from './shelf.js';

/** What stands wherever a load is shown. */
export const LOAD_CAUTIONS: readonly string[] = [
  'An estimate, no certification: local codes and licensed practice come first.',
  'Fix tall units to the wall, so that they cannot tip over.',
];

/** A fact about a shelf under its load: what it is called, and what it is. */
export interface SagFact {
  readonly name: string;
  readonly value: Text;
}

/** All there is to tell of a shelf under its load, its assumptions among it. */
export function sagFacts(sag: Sag): readonly SagFact[] {
  const { first, inTime, creep, gap, may, longest } = sag;
  const [low, high] = gap.between;
  return [
    { name: 'carries', value: burden(sag) },
    { name: 'spans', value: say`${gap.length} between ${low} and ${high}` },
    { name: 'sags at first', value: say`${first}; ${may.first} is let pass` },
    ...(inTime && creep
      ? [
          {
            name: 'in time',
            value: say`${inTime}, with creep of ${figure(creep)}${may.inTime ? say`; ${may.inTime} is let pass` : say``}`,
          },
        ]
      : []),
    {
      name: 'passes',
      value: longest
        ? say`a span of up to ${Rational.of(Math.floor(longest.value))}`
        : say`any span up to ${Rational.of(10_000)}`,
    },
    { name: 'reckoned with', value: [assumptions(sag)] },
  ];
}

/** "25 kg, 4 kg at the middle and its own weight". */
export function burden({ loads, ownWeight }: Sag): Text {
  const words = loads.map(({ text, lies }) => (lies === 'middle' ? `${text} at the middle` : text));
  return list(ownWeight ? [...words, 'its own weight'] : words);
}

/** "ends that rest, 8.5 GPa along the span, its own weight not known, no shear". */
export function assumptions({ beam, ownWeight, creep }: Sag): string {
  return [
    beam.ends === 'fixed' ? 'ends that cannot turn' : 'ends that rest',
    `${figure(beam.stiffness.div(Rational.of(1000)))} GPa along the span`,
    ...(ownWeight ? [] : ['its own weight left out, as its material tells no density']),
    ...(creep ? [] : ['no sag in time, as its material tells no creep']),
    'no shear',
  ].join(', ');
}

/** A figure that is no length, to two places. */
const figure = (r: Rational): string => String(Number(r.toNumber().toFixed(2)));
