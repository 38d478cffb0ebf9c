import { Rational } from '../number/rational.js';
import { type Axis, axisOf, opposite, outward, type Side } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { AsMade } from './as-made.js';
import { NOTHING_OFF, reversed, type Stack, stacked, times } from './stack.js';

/** A side of a part. */
export interface Plane {
  readonly part: PartId;
  readonly side: Side;
}

/** How one plane comes to lie where it does from another: through which parts, and how far off. */
export interface Path {
  readonly through: readonly PartId[];
  /** How far `to` comes beyond `from`, along the axis, from where it was planned. */
  readonly off: Stack;
}

/** Farther than this through a cabinet nobody follows one error. */
const MOST_PLANES = 400;

interface Step {
  readonly plane: Plane;
  readonly before: Step | undefined;
  readonly off: () => Stack;
}

/** The planes of a cabinet as its parts and joints hold them together. */
export class Held {
  private readonly links: ReadonlyMap<string, readonly { readonly to: Plane; readonly off: () => Stack }[]>;

  constructor(private readonly made: AsMade) {
    const links = new Map<string, { to: Plane; off: () => Stack }[]>();
    const add = (from: Plane, to: Plane, off: () => Stack) => {
      const known = links.get(key(from));
      if (known) known.push({ to, off });
      else links.set(key(from), [{ to, off }]);
    };
    for (const joint of made.joints)
      for (const { a, aSide, b, bSide, off } of made.linksOf(joint)) {
        // Sides of a turned part, but for its ends up and down, lie in no plane that others have a side in.
        if (joint.turn && axisOf(aSide) !== 'z') continue;
        add({ part: b, side: bSide }, { part: a, side: aSide }, off);
        add({ part: a, side: aSide }, { part: b, side: bSide }, () => reversed(off()));
      }
    this.links = links;
  }

  /**
   * The way from one plane to another over the fewest parts and joints; of equally short ones the first by name.
   * `via` tells which parts it may lead through.
   */
  path(from: Plane, to: Plane, via: (part: PartId) => boolean = () => true): Path | undefined {
    const target = key(to);
    const seen = new Set([key(from)]);
    let front: Step[] = [{ plane: from, before: undefined, off: () => NOTHING_OFF }];
    while (front.length > 0 && seen.size < MOST_PLANES) {
      const next: Step[] = [];
      for (const step of front) {
        if (key(step.plane) === target) return follow(step);
        for (const { to: plane, off } of this.from(step.plane)) {
          if (seen.has(key(plane)) || (plane.part !== to.part && !via(plane.part))) continue;
          seen.add(key(plane));
          next.push({ plane, before: step, off });
        }
      }
      front = next;
    }
    return undefined;
  }

  private from(plane: Plane): readonly { readonly to: Plane; readonly off: () => Stack }[] {
    const { part, side } = plane;
    const across = opposite(side);
    const axis: Axis = axisOf(side);
    const own = () => times(this.made.size(part, axis), Rational.of(outward(across)));
    return [...(this.links.get(key(plane)) ?? []), { to: { part, side: across }, off: own }];
  }
}

const key = ({ part, side }: Plane): string => `${part}.${side}`;

function follow(last: Step): Path {
  const steps: Step[] = [];
  for (let step: Step | undefined = last; step; step = step.before) steps.unshift(step);
  return {
    through: [...new Set(steps.map(({ plane }) => plane.part))],
    off: stacked(...steps.map(({ off }) => off())),
  };
}
