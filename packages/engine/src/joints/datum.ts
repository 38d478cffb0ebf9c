import type { Trouble } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import { hostsOf } from '../sizes/hosts.js';
import type { Solved } from '../sizes/solved.js';
import { type Axis, axisOf, outward, type Side } from '../spec/sides.js';
import type { JointStatement, PartId } from '../spec/spec.js';
import type { Bench } from './bench.js';

/** Runs along y are measured from the rear, along z from the bottom, along x from the left, unless said. */
const DEFAULT_DATUM: Record<Axis, Side> = { x: 'left', y: 'rear', z: 'bottom' };

export interface Datum {
  readonly side: Side;
  /** Coordinate of zero: the outermost datum edge of all parts in the statement, or the plane written. */
  readonly zero: Rational | undefined;
  /** Unknown plane numbers of zero's candidates, for tolerances: the part whose edge zero is. */
  readonly zeroPart: PartId | undefined;
  readonly trouble?: Trouble | undefined;
}

export function datumOf(solved: Solved, bench: Bench, joint: JointStatement, run: Axis): Datum {
  const { spec } = solved;
  if (joint.datum && axisOf(joint.datum.side) !== run) {
    return { side: DEFAULT_DATUM[run], zero: undefined, zeroPart: undefined, trouble: 'datum off the run' };
  }
  const general = spec.datum && axisOf(spec.datum.side) === run ? spec.datum.side : undefined;
  const side = joint.datum?.side ?? general ?? DEFAULT_DATUM[run];
  const plane = joint.datum?.plane;
  if (plane) return { side, zero: solved.plane(plane), zeroPart: plane.part };
  let zero: Rational | undefined;
  let zeroPart: PartId | undefined;
  for (const id of [...hostsOf(joint), ...joint.entering]) {
    const edge = bench.at(id, side);
    if (edge === undefined) continue;
    if (zero === undefined || edge.compare(zero) === outward(side)) {
      zero = edge;
      zeroPart = id;
    }
  }
  return { side, zero, zeroPart };
}

/** Distance inward from zero to a coordinate along the run, mm. */
export const inward = (datum: Side, zero: Rational, coordinate: Rational): Rational =>
  outward(datum) === 1 ? zero.sub(coordinate) : coordinate.sub(zero);

/** Coordinate of a line at a distance inward from zero. */
export const coordinateAt = (datum: Side, zero: Rational, fromZero: Rational): Rational =>
  outward(datum) === 1 ? zero.sub(fromZero) : zero.add(fromZero);
