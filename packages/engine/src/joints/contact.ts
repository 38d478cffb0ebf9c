import type { Meeting } from '../sizes/hosts.js';
import type { Solved } from '../sizes/solved.js';
import { type Axis, axisOf, isHigh, type Side } from '../spec/sides.js';
import type { NotchStatement, PartId, PartSpec } from '../spec/spec.js';
import { clipCant } from '../turned/clip.js';
import type { Kind } from './meeting.js';
import { overlap, type Range, rangeOf, without } from './place.js';

/**
 * The stretch of the run where the two touching sides overlap, as coordinates, with notches taken out.
 * Undefined when a size is not fixed or the sides do not overlap in both directions.
 */
export function contactRange(solved: Solved, part: PartSpec, meeting: Meeting, kind: Kind): Range | undefined {
  const { run, across } = kind;
  if (run === undefined || across === undefined) return undefined;
  const along = overlap(rangeOf(solved, part.id, run), rangeOf(solved, meeting.host, run));
  if (!along) return undefined;
  if (kind.meeting === 'mitre') return along;
  const band = overlap(rangeOf(solved, part.id, across), rangeOf(solved, meeting.host, across));
  if (!band) return undefined;
  return [part.id, meeting.host].reduce<Range | undefined>((left, id) => {
    const surface = id === part.id ? meeting.enteringSide : meeting.hostSide;
    const notched = left && clipNotch(solved, id, surface, left, run, band, across);
    return notched && clipCant(solved, id, surface, notched, run, band);
  }, along);
}

/** Takes a part's notches out of a contact on its side `surface`. */
function clipNotch(
  solved: Solved,
  part: PartId,
  surface: Side,
  along: Range,
  run: Axis,
  band: Range,
  across: Axis,
): Range | undefined {
  let left: Range | undefined = along;
  for (const statement of solved.spec.statements) {
    if (statement.kind !== 'notch' || !statement.parts.includes(part)) continue;
    const onAxis = (axis: Axis): Range | undefined => {
      const side = statement.corner.find((s) => axisOf(s) === axis);
      return side === undefined ? rangeOf(solved, part, axis) : notchRange(solved, part, side, statement.corner);
    };
    const surfaceSide = statement.corner.find((s) => axisOf(s) === axisOf(surface));
    if (surfaceSide !== undefined && surfaceSide !== surface) continue;
    const cutRun = onAxis(run);
    if (left && cutRun && overlap(band, onAxis(across))) left = without(left, cutRun);
  }
  return left;
}

/** From a side to the wall its notch has inside it. */
export function notchRange(
  solved: Solved,
  part: PartId,
  side: Side,
  corner: NotchStatement['corner'],
): Range | undefined {
  const outer = solved.at(part, side);
  const wall = solved.notch(part, side, corner);
  if (!outer || !wall) return undefined;
  return isHigh(side) ? { lo: wall, hi: outer } : { lo: outer, hi: wall };
}
