import { type Bounded, boundedOf, compareSqrt, sqrtBounded, subBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Connector, Machine } from '../spec/stock.js';

const { TWO, ZERO } = Rational;
const FOUR = Rational.of(4);

/**
 * Why a connector that is short, thin and narrow enough for its two slots still does not go home in them.
 *
 * Bodies, taken no smaller than they are: a biscuit is bounded by two arcs no rounder than the cutter's, cut off square
 * where it is as long as it is said to be; a loose tenon has round ends; a dowel is a cylinder.
 */
export type Binding =
  /** Its ends, `need` across with room for glue, lie where the arcs of the two slots leave only `room`. */
  | { readonly kind: 'on the arc'; readonly need: Rational; readonly room: Bounded; readonly short: Bounded }
  /** The square corners of a biscuit stand `short` out of the round end of a mortise or hole. */
  | { readonly kind: 'at the corners'; readonly short: Bounded; readonly length: Bounded };

/** Both halves are cut by one machine, with their middles in line; `depths` are theirs. */
export function bindingOf(connector: Connector, machine: Machine, depths: readonly Rational[]): Binding | undefined {
  if (machine.kind === 'disc') return onTheArc(connector, machine, depths);
  return connector.shape === 'biscuit' ? atTheCorners(connector, machine) : undefined;
}

/**
 * At half the connector's length a from the middle, a slot of plunge p by a disc of radius r is √(r² − a²) + p − r deep
 * (plane geometry); both halves together must take the connector's ends and the glue.
 */
function onTheArc(connector: Connector, machine: Machine, depths: readonly Rational[]): Binding | undefined {
  const radius = machine.diameter.div(TWO);
  const half = connector.along.div(TWO);
  const glue = connector.clearance ?? ZERO;
  if (connector.shape === 'biscuit' && !pointed(connector, radius)) return undefined;
  const need = connector.shape === 'biscuit' ? glue : connector.across.add(glue);
  const square = radius.mul(radius).sub(half.mul(half));
  if (square.sign() < 0) return undefined;
  const sunk = machine.diameter.sub(Rational.sum(depths));
  if (compareSqrt(square.mul(FOUR), need.add(sunk)) >= 0) return undefined;
  const arcs = sqrtBounded(square.mul(FOUR));
  const room = subBounded(arcs, boundedOf(sunk));
  return { kind: 'on the arc', need, room, short: subBounded(boundedOf(need), room) };
}

/**
 * Whether arcs through a biscuit's length and width are flatter than the cutter's, so that they meet in points: the
 * radius (a² + b²) / 2b over half its length a and half its width b, against the cutter's (plane geometry). Else it is
 * as round as the cutter, and goes as deep everywhere as in the middle.
 */
function pointed({ along, across }: Connector, radius: Rational): boolean {
  const [a, b] = [along.div(TWO), across.div(TWO)];
  return a.mul(a).add(b.mul(b)).gt(radius.mul(across));
}

/** The corner lies a along and t/2 across; the round end has its middle at l/2 − k/2 and the radius k/2. */
function atTheCorners(connector: Connector, machine: Machine): Binding | undefined {
  const radius = machine.kerf.div(TWO);
  const half = connector.along.div(TWO);
  const thick = connector.thickness.div(TWO);
  const length = machine.kind === 'drill' ? machine.kerf : (connector.slot ?? connector.along);
  const reach = Rational.max(ZERO, length.div(TWO).sub(radius));
  const beyond = half.sub(reach);
  if (beyond.sign() <= 0) return undefined;
  const corner = beyond.mul(beyond).add(thick.mul(thick));
  if (corner.le(radius.mul(radius))) return undefined;
  const round = radius.mul(radius).sub(thick.mul(thick));
  const sagitta = round.sign() < 0 ? { value: 0, error: 0 } : sqrtBounded(round);
  const straight = subBounded(boundedOf(half), sagitta);
  return {
    kind: 'at the corners',
    short: subBounded(sqrtBounded(corner), boundedOf(radius)),
    length: { value: 2 * straight.value + machine.kerf.toNumber(), error: 2 * straight.error + 1e-12 },
  };
}
