import { Bench } from '../joints/bench.js';
import { Rational } from '../number/rational.js';
import { Solved } from '../sizes/solved.js';
import { type Axis, axisOf, highSide, isHigh, lowSide, opposite, type Side } from '../spec/sides.js';
import type { PartId, PartSpec, Spec } from '../spec/spec.js';
import { acrossCant, type Span, spanOf } from './span.js';

/**
 * A cabinet as it looks from the frame of one turned part: the part lies square in it, and the level parts that have
 * the same cant have it where their outer side would be, with its two ends for their left and right. So a joint is
 * worked out there as any other is. Heights are the cabinet's; no other part has a place across or along.
 */
export class TurnedFrame extends Solved {
  private readonly faces: ReturnType<typeof acrossCant>;

  constructor(
    private readonly square: Solved,
    readonly turned: PartSpec,
    readonly span: Span,
  ) {
    super(withoutCorners(square.spec), square.system, square.solution);
    this.faces = acrossCant(square, turned, span);
  }

  override at(part: PartId, side: Side): Rational | undefined {
    const axis = axisOf(side);
    if (axis === 'z') return this.square.at(part, side);
    if (this.system.planes.part(part)?.attitude !== 'level' && part !== this.turned.id)
      return this.square.at(part, side);
    if (axis === 'x') return isHigh(side) ? this.span.rounded : Rational.ZERO;
    if (part === this.turned.id) return isHigh(side) ? this.faces?.hi : this.faces?.lo;
    // How far a level part reaches behind its cant is of no account, as long as it is beyond the turned part.
    const { outer } = this.span;
    if (side === outer) return Rational.ZERO;
    return isHigh(side) ? this.faces?.hi.mul(Rational.TWO) : this.faces?.lo.mul(Rational.TWO);
  }

  override extent(part: PartId, axis: Axis): Rational | undefined {
    const own = part === this.turned.id || this.system.planes.part(part)?.attitude === 'level';
    if (axis === 'z' || !own) return this.square.extent(part, axis);
    const [lo, hi] = [this.at(part, lowSide(axis)), this.at(part, highSide(axis))];
    return lo && hi?.sub(lo);
  }
}

/** Corners cut off the other parts are told by sides of theirs, which are others here; what they take of a contact is told apart. */
const withoutCorners = (spec: Spec): Spec => ({
  ...spec,
  statements: spec.statements.filter(({ kind }) => kind !== 'notch' && kind !== 'cant'),
});

/** The bench for such a frame: no band is glued on a cant. */
export class TurnedBench extends Bench {
  constructor(private readonly frame: TurnedFrame) {
    super(frame);
  }

  override missing(part: PartId, side: Side): Rational {
    return part === this.frame.turned.id || axisOf(side) === 'z' ? super.missing(part, side) : Rational.ZERO;
  }
}

/** The face of a turned part that lies in the plane of its cant. */
export const faceOnCant = (span: Span, laid: boolean): Side => (laid ? opposite(span.outer) : span.outer);

const frames = new WeakMap<Solved, Map<PartId, TurnedFrame | undefined>>();

/** The frame of a turned part; undefined while its cant is not fixed or is none. */
export function frameOf(solved: Solved, part: PartSpec): TurnedFrame | undefined {
  if (!part.on) return undefined;
  const known = frames.get(solved) ?? new Map<PartId, TurnedFrame | undefined>();
  frames.set(solved, known);
  if (!known.has(part.id)) {
    const span = spanOf(solved, part.on.part);
    known.set(part.id, span && new TurnedFrame(solved, part, span));
  }
  return known.get(part.id);
}
