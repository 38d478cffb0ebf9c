import { type Bounded, boundedOf } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Connector, Machine } from '../spec/stock.js';
import { chord, halfChordSquared, nearHalfChord } from './disc.js';

/** Length of a slot's opening along the run, mm: a disc's chord, a mortise's length, a hole's diameter. */
export function mouthLength(connector: Connector, machine: Machine, depth: Rational): Bounded {
  if (machine.kind === 'disc') return chord(machine.diameter, depth);
  return boundedOf(roundLength(connector, machine));
}

/**
 * Whether an opening of this length surely has `rest` more than half of itself in `room` from its middle, mm, told by
 * doubles. Nearly all have, and only for the others need it be reckoned exactly.
 */
export const surelyReaches = ({ value, error }: Bounded, room: number, rest: number): boolean =>
  room - rest - value / 2 > 1e-9 * (1 + Math.abs(room) + rest + value) + error;

/**
 * Whether `room` from a slot's middle is at least half its opening and `rest` more: exact even for a disc, whose
 * half chord is the root of p·(D − p).
 */
export function reaches(
  connector: Connector,
  machine: Machine,
  depth: Rational,
  room: Rational,
  rest: Rational,
): boolean {
  const far = margin(connector, machine, depth, room.toNumber() - rest.toNumber());
  if (far !== undefined) return far > 0;
  const left = room.sub(rest);
  if (machine.kind !== 'disc') return left.ge(roundLength(connector, machine).div(Rational.TWO));
  if (left.sign() < 0) return false;
  return left.mul(left).ge(halfChordSquared(machine.diameter, depth));
}

/**
 * How much more than half the opening `left` is, in doubles; undefined where it is so little that their rounding
 * could turn it round.
 */
function margin(connector: Connector, machine: Machine, depth: Rational, left: number): number | undefined {
  const half =
    machine.kind === 'disc' ? nearHalfChord(machine.diameter, depth) : roundLength(connector, machine).toNumber() / 2;
  const more = left - half;
  return Math.abs(more) > 1e-9 * (1 + Math.abs(left) + half) ? more : undefined;
}

/** Whether a connector is no longer than its opening at the surface; exact, as above. */
export function goesIn(connector: Connector, machine: Machine, depth: Rational): boolean {
  const half = connector.along.div(Rational.TWO);
  if (machine.kind !== 'disc') return connector.along.le(roundLength(connector, machine));
  return half.mul(half).le(halfChordSquared(machine.diameter, depth));
}

const roundLength = (connector: Connector, machine: Machine): Rational =>
  machine.kind === 'drill' ? machine.diameter : (connector.slot ?? connector.along);
