import type { FittedBand, Spacer } from '../fit/fit.js';
import { mouthLength } from '../geometry/mouth.js';
import type { Bounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import type { Tolerance } from '../spec/input.js';
import { outward, type Side } from '../spec/sides.js';
import type { PartId, Spec } from '../spec/spec.js';
import type { Connector, Machine } from '../spec/stock.js';
import { makeUp } from './spacers.js';

/** Bands glued on a part, one a side; a side banded twice carries the later band written. */
export function bandsOf(spec: Spec, part: PartId): readonly FittedBand[] {
  const bands = new Map<Side, FittedBand>();
  for (const statement of spec.statements) {
    if (statement.kind !== 'band' || !statement.parts.includes(part)) continue;
    const band = spec.shop.bands.get(statement.band);
    if (!band) continue;
    for (const side of statement.sides) bands.set(side, { side, band: band.name, thickness: band.thickness.value });
  }
  return [...bands.values()];
}

/** The parts as they lie at the bench when they are milled: finished, or still without their bands. */
export class Bench {
  private readonly bands = new Map<PartId, readonly FittedBand[]>();
  private readonly mouths = new Map<string, Bounded>();
  /** Like parts are set back alike. */
  private readonly spacers = new Map<string, Spacer>();

  constructor(private readonly solved: Solved) {
    if (solved.spec.milled.when === 'before banding') {
      for (const part of solved.spec.parts) this.bands.set(part.id, bandsOf(solved.spec, part.id));
    }
  }

  /** Thickness of the band still missing on a side while milling, mm. */
  missing(part: PartId, side: Side): Rational {
    return this.bands.get(part)?.find((band) => band.side === side)?.thickness ?? Rational.ZERO;
  }

  /** Coordinate of a side as it lies at the bench. */
  at(part: PartId, side: Side): Rational | undefined {
    const finished = this.solved.at(part, side);
    const missing = this.missing(part, side);
    if (missing.isZero()) return finished;
    return outward(side) === 1 ? finished?.sub(missing) : finished?.add(missing);
  }

  /** Length of what a connector's machine leaves at the surface of a face or an edge, mm. */
  mouth(connector: Connector, machine: Machine, into: 'face' | 'edge'): Bounded {
    const key = `${connector.name} ${into}`;
    const length = this.mouths.get(key) ?? mouthLength(connector, machine, connector.plunge[into]);
    this.mouths.set(key, length);
    return length;
  }

  /** What makes up a setback, mm; `cut` where the joint asks for a block of its own. */
  spacer(setback: Rational, tolerance: Tolerance, cut: boolean): Spacer {
    const { jig } = this.solved.spec.shop;
    if (setback.sign() <= 0) return makeUp(setback, tolerance, jig, cut);
    const { plus, minus } = tolerance;
    const key = `${setback} ${plus} ${minus} ${cut}`;
    const spacer = this.spacers.get(key) ?? makeUp(setback, tolerance, jig, cut);
    this.spacers.set(key, spacer);
    return spacer;
  }
}
