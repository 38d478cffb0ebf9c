import type { Fit, FittedJoint, Half } from '../fit/fit.js';
import { inRange } from '../joints/stops.js';
import { Rational } from '../number/rational.js';
import { type Axis, axisOf, isHigh } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { Jig } from '../spec/stock.js';

/** Slots that are milled against a stop, and so lie elsewhere than the tables say where the stop is off. */
export interface StoppedHalf {
  readonly joint: FittedJoint;
  readonly half: Half;
  /** How far they really lie from the end, mm. */
  readonly really: Rational;
}

/** A part that does not come as it should at all of its joints: it stands askew by so much. */
export interface Askew {
  readonly part: PartId;
  readonly axis: Axis;
  /** From where one of its joints has it to where another one does, mm; > 0. */
  readonly by: Rational;
}

/**
 * What a stop that is off does to a cabinet that is milled with it as it stands. The other half of each joint is measured from
 * its own face and stays: the part that meets the face is moved with its slots. Where some of its joints move it otherwise
 * than others, it stands askew.
 */
export interface StopMoves {
  readonly halves: readonly StoppedHalf[];
  readonly askew: readonly Askew[];
}

/**
 * @param jig whose stop it is; what lies beyond its reach is marked out, and stays
 * @param off how far the stop stands from where it was set, away from the end, mm
 */
export function stopMoves({ joints }: Fit, jig: Jig, off: Rational): StopMoves {
  const halves: StoppedHalf[] = [];
  const places = new Map<string, { readonly part: PartId; readonly axis: Axis; readonly at: Rational[] }>();
  for (const joint of joints)
    for (const half of joint.halves) {
      // A turned part's joints are told in a frame of its own.
      if (half.role !== 'face' || half.slots.length === 0 || half.turn) continue;
      const isStopped = half.stop !== undefined && !half.stop.at.isZero() && inRange(jig, half.stop.at);
      if (isStopped) halves.push({ joint, half, really: half.across.add(off) });
      const part = half.part === joint.host ? joint.entering : joint.host;
      const axis = axisOf(half.from.side);
      const place = places.get(`${part} ${axis}`) ?? { part, axis, at: [] };
      places.set(`${part} ${axis}`, place);
      // Away from the end that it is measured from.
      place.at.push(!isStopped ? Rational.ZERO : isHigh(half.from.side) ? off.neg() : off);
    }
  const askew = [...places.values()].flatMap(({ part, axis, at }): Askew[] => {
    const [first = Rational.ZERO, ...others] = at;
    const by = Rational.max(first, ...others).sub(Rational.min(first, ...others));
    return by.isZero() ? [] : [{ part, axis, by }];
  });
  return { halves, askew };
}
