import { byId } from '../checks/support/alike.js';
import type { Box, Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import type { Term } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import { type Axis, opposite, type Side } from '../spec/sides.js';
import type { JointStatement, PartId, Spec } from '../spec/spec.js';
import type { Tolerances } from '../spec/stock.js';
import { contributor, Shared } from './contributor.js';
import { type Link, linksOf } from './links.js';
import { Held } from './path.js';
import { Sizes } from './sizes.js';
import { NOTHING_OFF, type Stack, Sum } from './stack.js';
import { TurnedAsMade } from './turned-as-made.js';

/** A part with its size and place. */
export type Boxed = FittedPart & { readonly box: Box };

const NO_TOLERANCES: Partial<Tolerances> = {};

/**
 * A cabinet as a shop makes it: parts cut to the sizes on the list and slots set to the figures of the tables, each off
 * by so much. The list and the tables stay as they are whatever the sheets turn out to be; what a thickness does to the
 * cabinet follows from where the slots are measured from.
 */
export class AsMade {
  readonly shared = new Shared();
  readonly tolerances: Partial<Tolerances>;
  /** By their ids, so that the order of the lines in a spec never shows. */
  readonly joints: readonly FittedJoint[];
  readonly sizes: Sizes;
  readonly turned: TurnedAsMade;
  private readonly parts: ReadonlyMap<PartId, FittedPart>;
  private readonly links = new Map<FittedJoint, readonly Link[]>();
  private readonly inputs: ReadonlyMap<string, Spec['inputs'][number]>;
  private readonly statements = new Map<string, JointStatement>();
  private foundHeld: Held | undefined;
  private foundEnds: ReadonlyMap<string, readonly FittedJoint[]> | undefined;
  private foundHosts: ReadonlyMap<string, readonly FittedJoint[]> | undefined;

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
    for (const one of spec.statements) if (one.kind === 'joint') this.statements.set(one.id, one);
    const inputs = spec.inputs.filter(({ kind, tolerance }) => kind !== 'thickness' && tolerance !== undefined);
    this.inputs = new Map(inputs.map((input) => [input.id, input]));
    this.sizes = new Sizes(this);
    this.turned = new TurnedAsMade(this);
  }

  /** How planes are held together by parts and joints. */
  get held(): Held {
    this.foundHeld ??= new Held(this);
    return this.foundHeld;
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

  size(id: PartId, axis: Axis): Stack {
    const part = this.parts.get(id);
    return part ? this.sizes.of(part, axis) : NOTHING_OFF;
  }

  /** Links of a joint, worked out once: they are asked for by each result of the joint and by every path through it. */
  linksOf(joint: FittedJoint): readonly Link[] {
    const known = this.links.get(joint);
    if (known) return known;
    const links = linksOf(this, joint);
    this.links.set(joint, links);
    return links;
  }

  statement(id: string): JointStatement | undefined {
    return this.statements.get(id);
  }

  /** The joints by which a part meets its hosts at one of its sides, the first by name first. */
  endsAt(part: PartId, side: Side): readonly FittedJoint[] {
    this.foundEnds ??= grouped(this.joints, ({ entering, enteringSide }) => `${entering}.${enteringSide}`);
    return this.foundEnds.get(`${part}.${side}`) ?? [];
  }

  /** The joints that a joint's host has at the same side, of the same kind. */
  at(joint: FittedJoint): readonly FittedJoint[] {
    const place = ({ host, hostSide, enteringSide, verb }: FittedJoint) =>
      `${host}.${hostSide}.${enteringSide}.${verb}`;
    this.foundHosts ??= grouped(this.joints, place);
    return this.foundHosts.get(place(joint)) ?? [];
  }

  /** The joint at the other end of the entering part, when it stands between two hosts. */
  acrossFrom({ entering, enteringSide }: FittedJoint): FittedJoint | undefined {
    return this.endsAt(entering, opposite(enteringSide))[0];
  }

  /**
   * The tolerances written in the text for the distance from one side to another, each piece off on its own: through
   * the equations of the sizes. `joint` keeps to what its own statement says.
   */
  statedBetween(
    a: { readonly part: PartId; readonly side: Side },
    b: { readonly part: PartId; readonly side: Side },
    what: () => string,
    joint?: FittedJoint,
  ): Stack {
    if (this.inputs.size === 0) return NOTHING_OFF;
    const { planes } = this.solved.system;
    const [high, low] = [planes.side(a.part, a.side), planes.side(b.part, b.side)];
    if (high === undefined || low === undefined) return NOTHING_OFF;
    const terms = this.solved.solution.sensitivity([
      { unknown: high, coefficient: Rational.ONE },
      { unknown: low, coefficient: Rational.of(-1) },
    ]);
    const own = joint ? terms.filter(({ input }) => input.startsWith(`${joint.statement} `)) : terms;
    return this.stated(own, what);
  }

  /** The tolerances written for the inputs that something depends on, each piece off on its own. */
  stated(terms: readonly Term[], what: () => string): Stack {
    const sum = new Sum();
    for (const { input, coefficient } of terms) {
      const found = this.inputs.get(input);
      if (!found) continue;
      const of = contributor('written', found.tolerance, {
        id: () => `written ${input}, ${what()}`,
        words: () => say`${found.label}, ${what()}`,
        source: found.source,
      });
      sum.add(of, coefficient);
    }
    return sum.done();
  }
}

function grouped<T>(items: readonly T[], by: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = by(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
