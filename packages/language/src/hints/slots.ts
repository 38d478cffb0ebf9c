import type { FittedJoint } from '@dryfit/engine';
import type { Joint } from '../generated/ast.js';
import { jointHover } from '../hover/joint.js';
import { stale } from '../hover/markdown.js';
import type { Fitted, Hint } from './hint.js';
import { endOfHead } from './statements.js';

/** At the end of a joint's head, how many slots, mortises or holes each half gets. */
export function slotHints(joint: Joint, id: string, fitted: Fitted): Hint[] {
  const joints = fitted.result.fit.joints.filter(({ statement, halves }) => statement === id && halves.length > 0);
  if (joints.length === 0) return [];
  const why = () => stale(jointHover(fitted.result, id, fitted.lengths), fitted);
  return [{ offset: endOfHead(joint), label: countsOf(joints), why }];
}

/** `5 slots each half`, or `5 slots each half in lh, 3 in rh` where they differ. */
function countsOf(joints: readonly FittedJoint[]): string {
  const hosts = new Map<number, Set<string>>();
  for (const { halves, host } of joints) {
    const count = halves[0]?.slots.length ?? 0;
    hosts.set(count, (hosts.get(count) ?? new Set()).add(host));
  }
  return [...hosts]
    .map(([count, names], index) => {
      const what = index === 0 ? ` ${noun(joints, count)} each half` : '';
      return `${count}${what}${hosts.size === 1 ? '' : ` at ${[...names].join(' and ')}`}`;
    })
    .join(', ');
}

function noun(joints: readonly FittedJoint[], count: number): string {
  const shape = joints[0]?.connector?.shape;
  const word = shape === 'dowel' ? 'hole' : shape === 'loose tenon' ? 'mortise' : 'slot';
  return count === 1 ? word : `${word}s`;
}
