import { byId } from '../checks/support/alike.js';
import type { Box, Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import type { Input } from '../spec/input.js';
import {
  type Axis,
  axisOf,
  dimensionOf,
  highSide,
  lowSide,
  opposite,
  type Side,
  thicknessAxis,
} from '../spec/sides.js';
import type { JointStatement, PartId, Spec } from '../spec/spec.js';
import type { Tolerances } from '../spec/stock.js';
import { Contributors } from './contributor.js';
import type { Link } from './links.js';
import { sheetsOf } from './sheets.js';
import { NOTHING_OFF, type Stack, single, stacked, times } from './stack.js';

/** A part with its size and place. */
export type Boxed = FittedPart & { readonly box: Box };

const NO_TOLERANCES: Partial<Tolerances> = {};

/**
 * A cabinet as a shop makes it: parts cut to the sizes on the list and slots set to the figures of the tables, each off
 * by so much. The list and the tables stay as they are whatever the sheets turn out to be; what a thickness does to the
 * cabinet follows from where the slots are measured from.
 */
export class AsMade {
  readonly contributors = new Contributors();
  readonly tolerances: Partial<Tolerances>;
  /** By their ids, so that the order of the lines in a spec never shows. */
  readonly joints: readonly FittedJoint[];
  private readonly parts: ReadonlyMap<PartId, FittedPart>;
  private readonly links = new Map<FittedJoint, readonly Link[]>();
  private readonly sizes = new Map<string, Stack>();
  private readonly written: ReadonlyMap<string, Input>;
  private statements: ReadonlyMap<string, JointStatement> | undefined;
  private ends: ReadonlyMap<string, FittedJoint> | undefined;

  constructor(
    readonly spec: Spec,
    readonly solved: Solved,
    readonly fit: Fit,
  ) {
    this.tolerances = spec.shop.tolerances ?? NO_TOLERANCES;
    this.joints = [...fit.joints].sort(
      (a, b) => byId(a.entering, b.entering) || byId(a.host, b.host) || byId(a.id, b.id),
    );
    this.parts = new Map(fit.parts.map((part) => [part.id, part]));
    const inputs = spec.inputs.filter(({ kind, tolerance }) => kind !== 'thickness' && tolerance !== undefined);
    this.written = new Map(inputs.map((input) => [input.id, input]));
  }

  /** The parts that have their sizes and places, by their ids. */
  boxed(): readonly Boxed[] {
    return this.fit.parts
      .flatMap((part) => (part.box ? [{ ...part, box: part.box }] : []))
      .sort((a, b) => byId(a.id, b.id));
  }

  part(id: PartId): FittedPart | undefined {
    return this.parts.get(id);
  }

  /** Links of a joint, worked out once: they are asked for by each result of the joint and by every path through it. */
  remembered(joint: FittedJoint, find: () => readonly Link[]): readonly Link[] {
    const known = this.links.get(joint);
    if (known) return known;
    const links = find();
    this.links.set(joint, links);
    return links;
  }

  statement(id: string): JointStatement | undefined {
    this.statements ??= new Map(
      this.spec.statements.flatMap((one) => (one.kind === 'joint' ? [[one.id, one] as const] : [])),
    );
    return this.statements.get(id);
  }

  /** The joint at the other end of the entering part, when it stands between two hosts. */
  acrossFrom({ entering, axis, enteringSide }: FittedJoint): FittedJoint | undefined {
    const key = (side: Side) => `${entering}\n${axis}\n${side}`;
    this.ends ??= new Map(
      [...this.joints].reverse().map((joint) => [`${joint.entering}\n${joint.axis}\n${joint.enteringSide}`, joint]),
    );
    return this.ends.get(key(opposite(enteringSide)));
  }

  /** How far a part's finished extent comes from the planned one. */
  size(id: PartId, axis: Axis): Stack {
    const key = `${id}\n${axis}`;
    const known = this.sizes.get(key);
    if (known) return known;
    const part = this.parts.get(id);
    const size = part ? stacked(this.core(part, axis), this.bands(part, axis)) : NOTHING_OFF;
    this.sizes.set(key, size);
    return size;
  }

  private core(part: FittedPart, axis: Axis): Stack {
    if (axis === thicknessAxis(part.attitude)) return this.thickness(part);
    const cut = this.statedBetween(
      part.id,
      highSide(axis),
      part.id,
      lowSide(axis),
      `${dimensionOf(axis)} of ${part.id}`,
    );
    if (cut !== NOTHING_OFF) return cut;
    const { saw } = this.tolerances;
    const words = () => say`saw, ${dimensionOf(axis)} of ${part.id}`;
    return single(this.contributors.of(`saw ${part.id} ${axis}`, 'saw', saw?.tolerance, words, saw?.source));
  }

  /** Every sheet of every part is off on its own: parts of one delivery need not come from one sheet. */
  private thickness(part: FittedPart): Stack {
    const sheets = sheetsOf(this.spec, part.material);
    return stacked(
      ...sheets.map(({ name, thickness }, i) => {
        const layer = sheets.length > 1 ? `, layer ${i + 1}` : '';
        const words = () => say`thickness of ${part.id} (${name}${layer})`;
        const id = `thickness ${part.id} ${i}`;
        return single(this.contributors.of(id, 'thickness', thickness.tolerance, words, thickness.source, name));
      }),
    );
  }

  private bands(part: FittedPart, axis: Axis): Stack {
    return stacked(...part.bands.filter(({ side }) => axisOf(side) === axis).map(({ side }) => this.band(part, side)));
  }

  /** How far a band on a side comes from its thickness. */
  band(part: FittedPart, side: Side): Stack {
    const band = part.bands.find((one) => one.side === side);
    const thickness = band && this.spec.shop.bands.get(band.band)?.thickness;
    const words = () => say`band on the ${side} of ${part.id}`;
    const id = `band ${part.id} ${side}`;
    return single(this.contributors.of(id, 'band', thickness?.tolerance, words, thickness?.source));
  }

  /**
   * The tolerances written in the text for the distance from one side to another, each piece off on its own: through
   * the equations of the sizes. `joint` keeps to what its own statement says.
   */
  statedBetween(a: PartId, aSide: Side, b: PartId, bSide: Side, what: string, joint?: FittedJoint): Stack {
    if (this.written.size === 0) return NOTHING_OFF;
    const { planes } = this.solved.system;
    const [high, low] = [planes.side(a, aSide), planes.side(b, bSide)];
    if (high === undefined || low === undefined) return NOTHING_OFF;
    const terms = this.solved.solution.sensitivity([
      { unknown: high, coefficient: Rational.ONE },
      { unknown: low, coefficient: Rational.of(-1) },
    ]);
    return stacked(
      ...terms.map(({ input, coefficient }) => {
        const found = this.written.get(input);
        if (!found || (joint && !input.startsWith(`${joint.statement} `))) return NOTHING_OFF;
        const words = () => say`${found.label}, ${what}`;
        const id = `written ${input}, ${what}`;
        return times(single(this.contributors.of(id, 'written', found.tolerance, words, found.source)), coefficient);
      }),
    );
  }
}
