import {
  agree,
  canStand,
  inRange,
  type Jig,
  type Machine,
  type MeasuredLength,
  Rational,
  type Shop,
  stopFromJoint,
  stopFromWalls,
} from '@dryfit/engine';
import { canBeSet, type StopReport } from '@dryfit/output';
import { Misuse } from './io.js';

/** What was measured of a stop, mm. */
export interface StopLengths {
  readonly stop?: Rational | undefined;
  readonly stands?: Rational | undefined;
  readonly endNearer?: Rational | undefined;
  readonly endFarther?: Rational | undefined;
}

/** A stop as it was found, but for what that does to cabinets. */
export type StopFound = Pick<StopReport, 'jig' | 'set' | 'stands' | 'walls' | 'found' | 'held'>;

/**
 * What a test joint tells of the stop of a shop's jig; undefined where nothing of it was measured.
 * @param set the base that was set, where it can be set
 * @throws Misuse if the figures do not say it, cannot be meant, or contradict each other
 */
export function stopFound(
  { stop: set, stands, endNearer: nearer, endFarther: farther }: StopLengths,
  { jig, tolerances }: Shop,
  machine: Machine,
  base: Rational | undefined,
  within: Rational,
): StopFound | undefined {
  if ((nearer === undefined) !== (farther === undefined))
    throw new Misuse('a slot is measured to both its walls: give --end-nearer and --end-farther');
  const walls = nearer && farther ? { nearer, farther } : undefined;
  if (!set) {
    if (stands || walls)
      throw new Misuse('what is measured does not tell alone: give what the stop was set to with --stop');
    return undefined;
  }
  if (!stands && !walls)
    throw new Misuse('measure the joint: give --stands, or --end-nearer and --end-farther, with --stop');
  if (walls && !walls.nearer.lt(walls.farther))
    throw new Misuse('--end-nearer is to be less than --end-farther: both from the END');
  const owner = settable(jig, set);
  const byJoint = stands && stopFromJoint(set, stands, within);
  const byWalls = walls && stopFromWalls(set, walls, baseOf(machine, base), within);
  if (byJoint && byWalls && !agree(byJoint, byWalls))
    throw new Misuse(
      `the figures contradict each other: by --stands the stop is ${tellOff(byJoint)}, by the walls of the slot ${tellOff(byWalls)}: measure again, and find the base first`,
    );
  // The joint has nothing in it of what the base may be off.
  const found = byJoint ?? byWalls;
  if (!found) return undefined;
  const own = tolerances?.stop?.tolerance;
  return { jig: owner, set, stands, walls, found, held: own && Rational.max(own.plus, own.minus) };
}

function settable(jig: Jig | undefined, set: Rational): Jig {
  if (!jig?.stop) throw new Misuse(jig ? `${jig.name} has no stop` : 'the shop has no jig, and so no stop');
  const { least, most, step } = jig.stop;
  if (!inRange(jig, set))
    throw new Misuse(`--stop is outside of what the stop of ${jig.name} can be set to, ${mm(least)} to ${mm(most)} mm`);
  if (!canStand(jig, set))
    throw new Misuse(
      `the stop of ${jig.name} goes in steps of ${mm(step ?? Rational.ZERO)} mm, and --stop is none of them`,
    );
  return jig;
}

/** The base that the slot in the face was milled with, and how far it may be off. */
function baseOf(machine: Machine, set: Rational | undefined): MeasuredLength {
  if (canBeSet(machine) && !set)
    throw new Misuse(`the base of ${machine.name} can be set: give what it was set to with --set, or --stands alone`);
  const { least, plus, minus } = machine.base;
  return { value: set ?? least, within: Rational.max(plus ?? Rational.ZERO, minus ?? Rational.ZERO) };
}

const mm = (length: Rational): string => String(Number(length.toNumber().toFixed(3)));
const tellOff = ({ value, within }: MeasuredLength): string => `${mm(value)} ± ${mm(within)} mm off`;
