import {
  type Bound,
  type FirstMeasure,
  type FirstPiece,
  Rational,
  type Units,
  type Unsaid,
  wallAt,
} from '@dryfit/engine';
import { byCaliper, type Rounding } from '../print/caliper.js';
import { placeOn } from '../print/surface.js';

/** One thing to measure, in words, and its figures as calipers show them. */
export interface FirstRow {
  /** "bottom face to the slot, nearer wall". */
  readonly what: string;
  readonly wanted: string;
  /** What it may be, or why there is no figure: "no limit", "not told", "not written", "snug". */
  readonly least: string;
  readonly most: string;
}

/** What to measure on a first piece: across the joint to both walls of the slot, since nobody can measure to a middle. */
export function firstRows(piece: FirstPiece, units: Units): readonly FirstRow[] {
  return piece.measures.flatMap((measure) => rowsOf(piece, measure, units));
}

/** The gauge of a slot's width and length is what goes into it. Common practice, no source. */
const SNUG = 'Snug: goes in by hand, does not rattle.';

/** The two corners of a mitred end, in the trade's words. */
const CORNERS = { toe: 'Toe: the sharp corner of the mitre.', heel: 'Heel: the blunt corner of the mitre.' } as const;

/**
 * How the middles along the joint are found. The ends of a disc's slot run out, and come further apart the deeper it is;
 * half-way between them stays where it is.
 */
export function endsWords({ measures, operation }: FirstPiece, units: Units): string {
  const places = measures.flatMap(({ what, wanted, toWall }) => {
    if (!toWall || what === 'across') return [];
    const ends = (['nearer', 'farther'] as const).map((wall) => byCaliper(wallAt(wanted, toWall, wall), units));
    return [`${what === 'only' ? '' : `${what} `}${ends.join(' and ')}`];
  });
  const slot = slotWord(operation.joint.connector?.shape);
  const middle = places.length === 0 ? '' : `Middle of a ${slot}: half-way between its ends (${places.join('; ')}). `;
  const { kind } = operation.half.from;
  return `${middle}${SNUG}${kind === 'toe' || kind === 'heel' ? ` ${CORNERS[kind]}` : ''}`;
}

function rowsOf({ operation, unsaid }: FirstPiece, measure: FirstMeasure, units: Units): FirstRow[] {
  const { what, wanted, toWall, bounds, from } = measure;
  const { part, half, joint } = operation;
  const slot = slotWord(joint.connector?.shape);
  // How deep a mitred end may be slotted hangs on where the slot lies; a check keeps what is planned clear of the face.
  const unknown = what === 'depth' && half.role === 'mitre' ? 'not told' : 'no limit';
  const open = what === 'width' || what === 'length' ? 'snug' : unsaid.some(bears(measure)) ? 'not written' : unknown;
  const told = (bound: Bound | undefined, off: Rational, rounding: Rounding): string => {
    if (!bound) return open;
    // What has to be just as wanted is not to read as more, or less.
    return byCaliper(bound.at.add(off), units, bound.at.equals(wanted) ? 'nearest' : rounding);
  };
  const row = (words: string, off = Rational.ZERO): FirstRow => ({
    what: words,
    wanted: byCaliper(wanted.add(off), units),
    least: told(bounds.least, off, 'up'),
    most: told(bounds.most, off, 'down'),
  });
  if (!from) return [row(`${what} of the ${slot}`)];
  if (what === 'across') {
    const place = half.from.kind === 'toe' || half.from.kind === 'heel' ? half.from.kind : placeOn(part, half, from);
    if (!(toWall instanceof Rational)) return [row(`${place} to ${slot}, middle`)];
    return [row(`${place} to ${slot}, nearer wall`, toWall.neg()), row(`${place} to ${slot}, farther wall`, toWall)];
  }
  return [row(`${placeOn(part, half, from)} to ${what === 'only' ? slot : `${what} ${slot}`}, middle`)];
}

/** Whether what is not written would bound a measure. */
const bears =
  ({ what }: FirstMeasure) =>
  (one: Unsaid): boolean =>
    what === 'depth' ? one.startsWith('skin') : !one.startsWith('skin');

const slotWord = (shape: string | undefined): string =>
  shape === 'dowel' ? 'hole' : shape === 'loose tenon' ? 'mortise' : 'slot';

/** What the shop has not written, so that there is no bound; empty where it has written all that is asked for. */
export const unsaidWords = (unsaid: readonly Unsaid[]): string =>
  unsaid.length === 0
    ? ''
    : `No figure stands where the shop has written none (${unsaid.join(', ')}): try a joint with this piece instead.`;
