import { connectorsIn } from '../consumables/connectors.js';
import { isGlued } from '../consumables/glued.js';
import type { FittedJoint, FittedPart } from '../fit/fit.js';
import type { Vector } from '../geometry/vector.js';
import { wayOut } from './build.js';
import type { Clamps } from './glue-up.js';

/**
 * One clamp for each 300 mm of a joint that is begun, and one for a short one: common practice for carcases between
 * stiff parts, no source. Thin cauls spread it; more does no harm.
 */
const REACH = 300;

/**
 * Clamps that a step takes: those of its joints that are glued and pressed, pulling the way each joint closes. A panel in
 * a groove is held by what is clamped round it; a joint without connectors is clamped only where it says it is glued.
 */
export function clampsFor(
  joints: readonly FittedJoint[],
  part: (id: string) => FittedPart | undefined,
  ways?: readonly Vector[],
): readonly Clamps[] {
  const counts = new Map<string, { readonly along: Vector; count: number }>();
  for (const joint of joints) {
    if (!isClamped(joint)) continue;
    const along = closing(joint, part(joint.entering), ways);
    const key = String(along);
    const entry = counts.get(key) ?? { along, count: 0 };
    entry.count += Math.max(1, Math.ceil(lengthOf(joint) / REACH));
    counts.set(key, entry);
  }
  return [...counts.values()];
}

function isClamped(joint: FittedJoint): boolean {
  const { verb } = joint;
  return connectorsIn(joint) > 0 || (verb !== 'groove' && verb !== 'rest' && isGlued(joint));
}

const lengthOf = ({ contact }: FittedJoint): number => (contact ? contact.hi.sub(contact.lo).toNumber() : 0);

/** The way a joint is pressed, told by its positive sense: as the step moves into a rebate, else off the host or the mitre. */
function closing(joint: FittedJoint, entering: FittedPart | undefined, ways: readonly Vector[] | undefined): Vector {
  const own = wayOut(joint, entering);
  const way = joint.verb === 'rebate' ? (ways?.[0] ?? own) : own;
  const sign = Math.sign(way.find((k) => k !== 0) ?? 1);
  return [way[0] * sign || 0, way[1] * sign || 0, way[2] * sign || 0];
}
