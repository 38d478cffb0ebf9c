import type { Finding } from '../fit/finding.js';
import type { FittedJoint, Half } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import { fit } from '../pipeline.js';
import type { Spec } from '../spec/spec.js';
import type { Machine } from '../spec/stock.js';
import { withEntries } from '../spec/with-entries.js';
import { reckon } from '../tolerance/reckon.js';
import { type Result, resultsOf } from '../tolerance/results.js';

/** Slots whose place in the tables changes with the base of their machine. */
export interface MovedHalf {
  readonly joint: FittedJoint;
  readonly half: Half;
  /** From the same reference, with the base as corrected, mm. */
  readonly to: Rational;
}

/** What a corrected base does to a cabinet. */
export interface BaseMoves {
  readonly halves: readonly MovedHalf[];
  /** Steps, places and gaps that come out otherwise; the base drops out of all the others, since both halves have it. */
  readonly joints: readonly { readonly result: Result; readonly by: Rational }[];
  /** Findings that there are with the corrected base and were not before, and the other way round. */
  readonly found: readonly Finding[];
  readonly cured: readonly Finding[];
}

/** A cabinet with a machine whose base is another one. A machine whose base can be set keeps its range. */
export function withBase(spec: Spec, name: string, base: Rational): Spec {
  return withMachine(spec, name, (machine) => ({ ...machine, base: { ...machine.base, least: base, most: base } }));
}

function withMachine(spec: Spec, name: string, change: (machine: Machine) => Machine): Spec {
  const machine = spec.shop.machines.get(name);
  if (!machine) return spec;
  const machines = new Map([...spec.shop.machines, [name, change(machine)]]);
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
    joints: movedJoints(spec, name, base),
    found: missing(after.findings, before.findings),
    cured: missing(before.findings, after.findings),
  };
}

/** How far off the joints come that are milled with the base as it is and were planned with the one written. */
function movedJoints(spec: Spec, name: string, base: Rational): BaseMoves['joints'] {
  const by = base.sub(spec.shop.machines.get(name)?.base.least ?? base);
  if (by.isZero()) return [];
  const loose = { plus: by.abs(), minus: by.abs() };
  const off = withMachine(spec, name, (machine) => ({ ...machine, base: { ...machine.base, ...loose } }));
  return resultsOf(reckon(off)).flatMap((result) => {
    if (!('stack' in result.adds)) return [];
    const term = result.adds.stack.terms.find(({ of }) => of.id === `machine ${name}`);
    return term ? [{ result, by: by.mul(term.coefficient) }] : [];
  });
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
