import type { FittedPart } from '../fit/fit.js';
import { mayMirror, pieceSignature } from '../parts/same.js';
import type { PartId } from '../spec/spec.js';
import { halfKey, halvesOf, type WorkItem } from './operation.js';
import type { Plan } from './plan.js';
import type { Setting } from './setting.js';

/**
 * One piece of a job to be made again, with the settings that its job's plan has for it: pieces that were milled by that plan
 * are its mates.
 * @param item index of its cabinet in the job
 */
export function remade(plan: Plan, items: readonly WorkItem[], item: number, part: PartId): WorkItem | undefined {
  const own = items[item];
  if (!own) return undefined;
  const kept = new Map<string, Setting>();
  for (const joint of own.result.fit.joints)
    for (const half of joint.halves) {
      if (half.part !== part || half.slots.length === 0) continue;
      const setUp = plan.setUps.find(({ operations }) =>
        operations.some((one) => halvesOf(one, items).some((milled) => milled.item === item && milled.half === half)),
      );
      if (setUp) kept.set(halfKey(joint, half), setUp.setting);
    }
  return { result: own.result, count: 1, only: new Set([part]), kept };
}

/** Parts of a cabinet that a piece may be taken for. */
export interface Like {
  /** The same piece: one is as good as the other. */
  readonly same: readonly FittedPart[];
  /** Its mirror images, which it is not. */
  readonly mirrored: readonly FittedPart[];
}

export function likeIt(part: FittedPart, parts: readonly FittedPart[]): Like {
  const others = parts.filter(({ id }) => id !== part.id);
  const image = pieceSignature(part, true);
  return {
    same: others.filter(({ same }) => same === part.same),
    mirrored: others.filter(
      (other) =>
        other.same !== part.same && image !== undefined && mayMirror(part, other) && pieceSignature(other) === image,
    ),
  };
}
