import type { Finding } from '../fit/finding.js';
import type { FittedJoint, Half } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import { fit } from '../pipeline.js';
import type { Spec } from '../spec/spec.js';
import { withEntries } from '../spec/with-entries.js';

/** Slots whose place in the tables changes with the base of their machine. */
export interface MovedHalf {
  readonly joint: FittedJoint;
  readonly half: Half;
  /** From the same reference, with the base as corrected, mm. */
  readonly to: Rational;
}

/**
 * What a corrected base does to a cabinet. Both halves of a joint are milled with it from one plane, and so move together:
 * no step, place or gap comes out otherwise.
 */
export interface BaseMoves {
  readonly halves: readonly MovedHalf[];
  /** Findings that there are with the corrected base and were not before, and the other way round. */
  readonly found: readonly Finding[];
  readonly cured: readonly Finding[];
}

/** A cabinet with a machine whose base is another one. A machine whose base can be set keeps its range. */
export function withBase(spec: Spec, name: string, base: Rational): Spec {
  const machine = spec.shop.machines.get(name);
  if (!machine) return spec;
  const corrected = { ...machine, base: { ...machine.base, least: base, most: base } };
  const machines = new Map([...spec.shop.machines, [name, corrected]]);
  return { ...spec, shop: withEntries(spec.shop, { machines }) };
}

/** What becomes of a cabinet when the fixed base of a machine is written as it really is. Works it out anew. */
export function baseMoves(spec: Spec, name: string, base: Rational): BaseMoves {
  const [before, after] = [fit(spec), fit(withBase(spec, name, base))];
  const joints = new Map(after.fit.joints.map((joint) => [joint.id, joint]));
  const halves = before.fit.joints.flatMap((joint) =>
    joint.halves.flatMap((half, i): MovedHalf[] => {
      const to = joints.get(joint.id)?.halves[i]?.across;
      const isMilled = joint.machine?.name === name && half.slots.length > 0;
      return isMilled && to && !to.equals(half.across) ? [{ joint, half, to }] : [];
    }),
  );
  return {
    halves,
    found: missing(after.findings, before.findings),
    cured: missing(before.findings, after.findings),
  };
}

/** Of each kind of finding at each place, as many as there are more. */
function missing(list: readonly Finding[], others: readonly Finding[]): readonly Finding[] {
  const key = ({ code, about }: Finding) => JSON.stringify([code, about]);
  const known = new Map<string, number>();
  for (const one of others) known.set(key(one), (known.get(key(one)) ?? 0) + 1);
  return list.filter((one) => {
    const left = known.get(key(one)) ?? 0;
    known.set(key(one), left - 1);
    return left <= 0;
  });
}
