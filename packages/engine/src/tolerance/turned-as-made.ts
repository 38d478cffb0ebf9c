import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { axisOf, dimensionOf, outward, type Side } from '../spec/sides.js';
import type { PartId, PartSpec } from '../spec/spec.js';
import { cantOf, legFrom } from '../turned/cant.js';
import { frameOf, type TurnedFrame } from '../turned/frame.js';
import { spanOf } from '../turned/span.js';
import type { AsMade } from './as-made.js';
import type { Plane } from './path.js';
import { NOTHING_OFF, type Stack, single, times } from './stack.js';

/** From the left end of a cant to its right one, or between the toes beside a turned part, in plan, as it is made. */
export interface PlanVector {
  /** mm; y toward the rear. */
  readonly x: number;
  readonly y: number;
  /** How much further along each axis it comes to reach. */
  readonly off: readonly [x: Stack, y: Stack];
}

/** A cant as it is cut: a line from one edge to the other, each end of it as far from the corner as its leg says. */
export interface CantAsMade extends PlanVector {
  /** How much more of the part is gone along each axis. */
  readonly legs: readonly [x: Stack, y: Stack];
}

/** The room that the parts beside a turned one leave it, from toe to toe. */
export interface Room extends PlanVector {
  readonly from: PartId;
  readonly to: PartId;
  /** The parts by which the two toes come to stand where they do. */
  readonly through: readonly PartId[];
}

/** How much longer a vector in plan is when it reaches `x` and `y` further, mm: exact geometry, in doubles. */
export const longerBy = (vector: PlanVector, x: number, y: number): number =>
  Math.hypot(vector.x + x, vector.y + y) - Math.hypot(vector.x, vector.y);

/** By how much it turns then, seen from above, radians; from the left to the rear is more than nothing. */
export const turnedBy = (vector: PlanVector, x: number, y: number): number =>
  Math.atan2(vector.x * y - vector.y * x, vector.x * (vector.x + x) + vector.y * (vector.y + y));

/** Cants and turned parts of a cabinet as it is made; each is worked out once. */
export class TurnedAsMade {
  private readonly cants = new Map<PartId, CantAsMade | undefined>();
  private readonly rooms = new Map<PartId, Room | undefined>();

  constructor(private readonly made: AsMade) {}

  part(id: PartId): PartSpec | undefined {
    const part = this.made.solved.system.planes.part(id);
    return part?.on ? part : undefined;
  }

  frame(id: PartId): TurnedFrame | undefined {
    const part = this.part(id);
    return part && frameOf(this.made.solved, part);
  }

  cant(level: PartId): CantAsMade | undefined {
    if (!this.cants.has(level)) this.cants.set(level, this.cutCant(level));
    return this.cants.get(level);
  }

  private cutCant(level: PartId): CantAsMade | undefined {
    const { solved } = this.made;
    const [span, cant] = [spanOf(solved, level), cantOf(solved.spec, level)];
    if (!span || !cant) return undefined;
    const { along } = span.turn;
    const leg = (axis: 'x' | 'y') => this.legOff(level, axis);
    const legs = [leg('x'), leg('y')] as const;
    const off = [times(legs[0], Rational.of(along.x.sign())), times(legs[1], Rational.of(along.y.sign()))] as const;
    return { x: along.x.toNumber(), y: along.y.toNumber(), legs, off };
  }

  /** A leg is sawn like any size; a tolerance that the text writes for it stands for what the saw brings. */
  private legOff(level: PartId, axis: 'x' | 'y'): Stack {
    const { shared, solved, tolerances } = this.made;
    const cant = cantOf(solved.spec, level);
    const side = cant?.corner.find((one) => axisOf(one) === axis);
    const leg = cant && side && legFrom(cant, side);
    if (!leg) return NOTHING_OFF;
    const what = `${dimensionOf(axis)} of the cant of ${level}`;
    const stated = this.made.stated(leg.terms, () => what);
    if (stated !== NOTHING_OFF) return stated;
    const { saw } = tolerances;
    const naming = { words: () => say`saw, ${what}`, source: saw?.source };
    return single(shared.of(`saw ${level}.cant ${axis}`, 'saw', saw?.tolerance, naming));
  }

  /** Undefined unless the part is mitred at both ends to parts that are held together. */
  room(id: PartId): Room | undefined {
    if (!this.rooms.has(id)) this.rooms.set(id, this.foundRoom(id));
    return this.rooms.get(id);
  }

  private foundRoom(id: PartId): Room | undefined {
    const { held } = this.made;
    const mitred = (side: Side) => this.made.endsAt(id, side).find(({ meeting, turn }) => meeting === 'mitre' && turn);
    const [left, right] = [mitred('left'), mitred('right')];
    const along = left?.turn?.along;
    if (!left || !right || !along) return undefined;
    const path = (axis: 'x' | 'y') => {
      const [from, to] = [toeOf(left, axis), toeOf(right, axis)];
      return from && to && held.path(from, to, (part) => part !== id);
    };
    const [x, y] = [path('x'), path('y')];
    if (!x || !y) return undefined;
    return {
      x: along.x.toNumber(),
      y: along.y.toNumber(),
      off: [x.off, y.off],
      from: left.host,
      to: right.host,
      through: [...new Set([...x.through, ...y.through])],
    };
  }

  /** What a turned part stands along: the cant it is measured from, or where it meets none, the toes beside it. */
  standsAlong(id: PartId): PlanVector | undefined {
    const level = this.part(id)?.on?.part;
    const measured = level !== undefined && this.made.joints.some((j) => j.entering === id && j.host === level);
    return (measured ? this.cant(level) : undefined) ?? this.room(id);
  }

  /**
   * How much wider the corner at a mitre comes when what the part stands along turns, as a factor of that turn: at its
   * two ends the one corner opens by as much as the other closes.
   */
  widens(joint: FittedJoint): 1 | -1 {
    const outer = joint.mitre?.entering ?? 'front';
    return outward(joint.enteringSide) * outward(outer) === -1 ? 1 : -1;
  }
}

/** The plane of a host, across an axis, that runs through the point where the two toes meet. */
function toeOf({ host, hostSide, mitre }: FittedJoint, axis: 'x' | 'y'): Plane | undefined {
  const side = [hostSide, mitre?.host].find((one) => one !== undefined && axisOf(one) === axis);
  return side && { part: host, side };
}
