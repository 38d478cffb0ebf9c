import { inRange } from '../joints/stops.js';
import { Rational } from '../number/rational.js';
import { type Side, thicknessAxis } from '../spec/sides.js';
import type { Jig, Shop } from '../spec/stock.js';
import { inRow } from './alike.js';
import type { Operation } from './operation.js';
import type { SetUp } from './plan.js';
import type { Setting } from './setting.js';

/** What keeps a piece where it is while it is milled, and how the operator and the machine go about it. */
export interface Holding {
  /** The jig's beam, the jig's clamps, or clamps that belong to no jig. */
  readonly by: 'beam' | 'jig clamps' | 'loose clamps';
  /** The two surfaces that are pressed home before anything is clamped: along the fences' line, and across it. */
  readonly along: { readonly side: Side; readonly to: 'fence' | 'spacer' | 'marks' };
  readonly across: { readonly side: Side; readonly to: 'bed' | 'bench' | 'stop' | 'machine' | 'marks' };
  /** Present where the piece must lie flat: a cup as the shop writes it, mm, or the proportions of the piece. */
  readonly flat?: { readonly because: 'cup'; readonly most: Rational } | { readonly because: 'thin' } | undefined;
  /** Blocks that keep a beam level, by how many of the pieces they are wanted for. */
  readonly packers: readonly Packer[];
  /**
   * `slides`: it lies on bed or reference with its base and is pushed on from line to line. `lifted`: it plunges into a face,
   * where its weight does not keep it down, and is set on anew at each line. Common practice, no source.
   */
  readonly machine: 'slides' | 'lifted';
  /** How many lift the piece; undefined where its weight is not known. */
  readonly people: 1 | 2 | undefined;
}

/** A block under a clamping beam. */
export interface Packer {
  /** mm. */
  readonly thickness: Rational;
  /** `far end`: the piece lies alone, the block stands in for a second one. `on the piece`: its neighbour is thicker. */
  readonly where: 'far end' | 'on the piece';
  /** So many pieces of the operation. */
  readonly pieces: number;
}

/**
 * More than this is lifted by two, kg: the load constant of the revised NIOSH lifting equation, which is what one person
 * should lift at most in the best of circumstances (DHHS (NIOSH) Publication 94-110, 1994). Local rules may ask for less.
 */
export const ONE_PERSON_LIFTS = Rational.of(23);

/** A piece that is more than so many times as long at the slotted edge as it is thick may be hollow: common practice, no source. */
const THIN = Rational.of(10);

/** How the pieces of an operation are held in a set-up. */
export function holdingOf(
  operation: Operation,
  { setting, beside, alike }: Pick<SetUp, 'setting' | 'beside' | 'alike'>,
  { jig, tolerances }: Pick<Shop, 'jig' | 'tolerances'>,
): Holding {
  const { half, weight } = operation;
  return {
    by: jig?.hold === 'beam' ? 'beam' : jig?.hold === 'clamps' ? 'jig clamps' : 'loose clamps',
    along: { side: half.datum, to: alongTo(operation, setting, jig) },
    across: { side: half.from.side, to: acrossTo(operation, setting, jig) },
    flat: flatness(operation, tolerances?.cup?.most),
    packers: jig?.hold === 'beam' ? packersOf(operation, beside, alike) : [],
    machine: half.role === 'face' ? 'lifted' : 'slides',
    people: weight && (weight.gt(ONE_PERSON_LIFTS) ? 2 : 1),
  };
}

function alongTo({ half }: Operation, { spacer }: Setting, jig: Jig | undefined): Holding['along']['to'] {
  // Nothing stands square to a cant that a fence could hold.
  if (half.turn || !jig?.fences.length || spacer.kind === 'mark out') return 'marks';
  return spacer.kind === 'none' ? 'fence' : 'spacer';
}

/** A stop holds the end it is set from; else reference and machine's base lie on the bed, or the base on the reference. */
function acrossTo({ half }: Operation, { stop, pose }: Setting, jig: Jig | undefined): Holding['across']['to'] {
  if (half.role === 'face' && stop) return jig && inRange(jig, stop) ? 'stop' : 'marks';
  if (pose.reference === 'up') return 'machine';
  return jig ? 'bed' : 'bench';
}

/**
 * Slots in an edge are measured from the face that lies on the bed: where it lies hollow, they come nearer to it, as
 * `tolerances { cup }` reckons. Slots in a face are measured from an end or from a cant, which a cup does not move.
 */
function flatness({ half, part, along }: Operation, cup: Rational | undefined): Holding['flat'] {
  if (half.role === 'face') return undefined;
  if (cup) return cup.isZero() ? undefined : { because: 'cup', most: cup };
  const thickness = part.extent[thicknessAxis(part.attitude)];
  return along && thickness && along.gt(thickness.mul(THIN)) ? { because: 'thin' } : undefined;
}

/** A beam lies level on two pieces that are equally thick: it takes a packer for one alone, and on the thinner of two. */
function packersOf(operation: Operation, beside: SetUp['beside'], alike: SetUp['alike']): readonly Packer[] {
  const own = thicknessOf(operation);
  if (!own) return [];
  const packers: Packer[] = [];
  let alone = operation.count;
  for (const { left, right, times } of beside) {
    if (left !== operation && right !== operation) continue;
    alone -= left === right ? 2 * times : times;
    const less = thicknessOf(left === operation ? right : left)?.sub(own);
    if (less && less.sign() > 0) add(packers, { thickness: less, where: 'on the piece', pieces: times });
  }
  for (const row of alike) alone -= inRow(row, operation) * row.times;
  if (alone > 0) add(packers, { thickness: own, where: 'far end', pieces: alone });
  return packers;
}

const thicknessOf = ({ part }: Operation): Rational | undefined => part.extent[thicknessAxis(part.attitude)];

function add(packers: Packer[], packer: Packer): void {
  const at = packers.findIndex((one) => one.where === packer.where && one.thickness.equals(packer.thickness));
  const alike = packers[at];
  if (alike) packers[at] = { ...alike, pieces: alike.pieces + packer.pieces };
  else packers.push(packer);
}
