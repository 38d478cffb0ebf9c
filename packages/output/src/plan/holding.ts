import {
  type Holding,
  holdingOf,
  ONE_PERSON_LIFTS,
  type Operation,
  type Rational,
  type Setting,
  type SetUp,
  type Shop,
  say,
  type Text,
} from '@dryfit/engine';
import { placeOn } from '../print/surface.js';
import type { PlannedJob } from './tables.js';

/** Where the datum goes: "rear edge against the spacer at the left fence", "mark out from the rear edge". */
export function alongWords({ part, half }: Operation, { along }: Holding): string {
  const side = placeOn(part, half, along.side);
  if (along.to === 'marks') return `mark out from the ${side}`;
  return along.to === 'fence'
    ? `${side} against the ${half.hand} fence`
    : `${side} against the spacer at the ${half.hand} fence`;
}

/** Where the reference goes: "bottom face down on the bed", "bottom end against the stop at 350". */
export function acrossWords({ part, half }: Operation, { across }: Holding, { stop }: Setting): Text {
  const side = placeOn(part, half, across.side);
  switch (across.to) {
    case 'bed':
    case 'bench':
      return [`${side} down on the ${across.to}`];
    case 'stop':
      return half.stop?.block
        ? [`${side} against a block of `, half.stop.block.width, ' at the stop', ...(stop ? [' at ', stop] : [])]
        : [`${side} against the stop`, ...(stop ? [' at ', stop] : [])];
    case 'machine':
      return [`the machine’s base on the ${side}`];
    case 'marks':
      return [
        'a straight edge clamped across, ',
        ...(stop ? [stop, ' from the '] : ['on the ']),
        `${side}, for the machine’s base`,
      ];
  }
}

/** What holds the piece: "the jig’s beam". */
export const clampWords = ({ by }: Holding): string =>
  by === 'beam' ? 'the jig’s beam' : by === 'jig clamps' ? 'the jig’s clamps' : 'clamps';

/** Whether it must be held flat: "flat", "flat (cup up to 0.3)". */
export function flatWords({ flat }: Holding): Text {
  if (!flat) return [];
  return flat.because === 'cup' ? say`flat (cup up to ${flat.most})` : ['flat'];
}

/** Why pieces are held flat for which the shop names no cup. */
const FLAT_NOTE =
  '"Flat": where a piece lies hollow, its slots come nearer to the bed; one more than ten times as long at the slotted edge as it is thick may be (common practice, no source).';

/** "packer 17.7 under the far end of the beam for 2 that lie alone". */
export function packerWords({ packers }: Holding, count: number): Text {
  return packers.flatMap(({ thickness, where, pieces }, i): Text => {
    const which = pieces === count ? '' : ` for ${pieces} of ${count}`;
    const place = where === 'far end' ? 'under the far end of the beam' : 'on the piece, under the beam';
    return [...(i === 0 ? [] : ['; ']), 'packer ', thickness, ` ${place}${which}`];
  });
}

/** What a clamp has to do besides holding: press the piece flat, lie level. */
export function clampingWords(operation: Operation, holding: Holding): Text {
  const [flat, packer] = [flatWords(holding), packerWords(holding, operation.count)];
  return [...flat, ...(flat.length > 0 && packer.length > 0 ? ['; '] : []), ...packer];
}

/** How the machine goes from one line to the next. */
export const machineWords = ({ machine }: Holding): string =>
  machine === 'slides'
    ? 'the machine slides on its base from line to line'
    : 'the machine is lifted and set on anew at each line';

/** Kilograms in a pound: exact by definition. */
const POUND = 0.45359237;

/** "3.7 kg", in inches "8.2 lb"; with two to lift it where it is heavy. */
export function weightWords(weight: Rational | undefined, people: Holding['people'], units: 'mm' | 'in'): string {
  if (!weight) return '';
  const kg = weight.toNumber();
  const told = units === 'in' ? `${tenths(kg / POUND)} lb` : `${tenths(kg)} kg`;
  return people === 2 ? `${told}, lift it with two` : told;
}

const tenths = (value: number): string => String(Number(value.toFixed(1)));

/** What "lift it with two" rests on. */
const LIFTING_NOTE = `More than ${ONE_PERSON_LIFTS} kg is lifted with two: it is what one should lift alone at most in the best of circumstances (load constant of the revised NIOSH lifting equation, DHHS (NIOSH) Publication 94-110, 1994). Local rules come first.`;

export const shopOf = ({ items }: PlannedJob): Pick<Shop, 'jig' | 'tolerances'> => items[0]?.result.spec.shop ?? {};

/** Whether there is a fence to put a datum to. */
export const hasFences = (job: PlannedJob): boolean => (shopOf(job).jig?.fences.length ?? 0) > 0;

/** What holds for all pieces of a set-up: the clamps, the machine, and what is to be lifted. */
export function holdingNotes(job: PlannedJob, setUp: SetUp): readonly Text[] {
  const own = setUp.operations.map((operation) => ({ operation, holding: holdingOf(operation, setUp, shopOf(job)) }));
  const [first] = own;
  if (!first) return [];
  const unknown = own.flatMap(({ operation: { part, weight } }) => (weight ? [] : [part.material]));
  return [
    [`Held by ${clampWords(first.holding)}; ${machineWords(first.holding)}.`],
    ...(own.some(({ holding }) => holding.flat?.because === 'thin') ? [[FLAT_NOTE]] : []),
    ...(own.some(({ holding }) => holding.people === 2) ? [[LIFTING_NOTE]] : []),
    ...(unknown.length > 0
      ? [[`No weight is told for parts of ${[...new Set(unknown)].sort().join(', ')}: the shop gives no density.`]]
      : []),
  ];
}
