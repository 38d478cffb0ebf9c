import type { FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { type Axis, axisOf, dimensionOf, highSide, lowSide, type Side, thicknessAxis } from '../spec/sides.js';
import type { AsMade } from './as-made.js';
import { type Contributor, contributor } from './contributor.js';
import { sheetsOf } from './sheets.js';
import { NOTHING_OFF, type Stack, Sum } from './stack.js';

/** How far the finished extents of parts come from the planned ones. */
export class Sizes {
  private readonly known = new Map<FittedPart, Partial<Record<Axis, Stack>>>();

  constructor(private readonly made: AsMade) {}

  of(part: FittedPart, axis: Axis): Stack {
    const own = this.known.get(part) ?? {};
    this.known.set(part, own);
    own[axis] ??= this.workOut(part, axis);
    return own[axis];
  }

  private workOut(part: FittedPart, axis: Axis): Stack {
    const sum = new Sum();
    if (axis === thicknessAxis(part.attitude)) this.addThickness(sum, part);
    else this.addCut(sum, part, axis);
    for (const { side } of part.bands) if (axisOf(side) === axis) sum.add(this.band(part, side), Rational.ONE);
    return sum.done();
  }

  /** A tolerance that the text writes for the size stands for what the saw brings. */
  private addCut(sum: Sum, part: FittedPart, axis: Axis): void {
    const { id } = part;
    const ends = [
      { part: id, side: highSide(axis) },
      { part: id, side: lowSide(axis) },
    ] as const;
    const stated = this.made.statedBetween(...ends, () => `${dimensionOf(axis)} of ${id}`);
    sum.stack(stated);
    if (stated !== NOTHING_OFF) return;
    const { saw } = this.made.tolerances;
    const of = contributor('saw', saw?.tolerance, {
      id: () => `saw ${id} ${axis}`,
      words: () => say`saw, ${dimensionOf(axis)} of ${id}`,
      source: saw?.source,
    });
    sum.add(of, Rational.ONE);
  }

  /** Every sheet of every part is off on its own: parts of one delivery need not come from one sheet. */
  private addThickness(sum: Sum, part: FittedPart): void {
    const sheets = sheetsOf(this.made.spec, part.material);
    sheets.forEach(({ name, thickness }, i) => {
      const layer = sheets.length > 1 ? `, layer ${i + 1}` : '';
      const of = contributor('thickness', thickness.tolerance, {
        id: () => `thickness ${part.id} ${i}`,
        words: () => say`thickness of ${part.id} (${name}${layer})`,
        source: thickness.source,
        sheet: name,
      });
      sum.add(of, Rational.ONE);
    });
  }

  /** How far a band on a side comes from its thickness. */
  band(part: FittedPart, side: Side): Contributor | undefined {
    const band = part.bands.find((one) => one.side === side);
    const thickness = band && this.made.spec.shop.bands.get(band.band)?.thickness;
    return this.made.shared.of(`band ${part.id} ${side}`, 'band', thickness?.tolerance, {
      words: () => say`band on the ${side} of ${part.id}`,
      source: thickness?.source,
    });
  }
}
