import type { FitResult, FittedJoint } from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { notUsed } from './lines.js';
import { plain } from './markdown.js';

/** More kinds of use than this are counted, not shown. */
const MOST = 8;

/**
 * Which lines of a pattern get a slot, joint by joint; joints where the same lines do share a line.
 * @param statement the only one whose joints are meant, or undefined for all that take the pattern
 */
export function patternUse(
  result: FitResult,
  pattern: string,
  statement: string | undefined,
  lengths: Lengths,
): string {
  const uses = new Map<string, string[]>();
  for (const joint of result.fit.joints) {
    if (joint.pattern !== pattern || (statement !== undefined && joint.statement !== statement)) continue;
    const use = useOf(joint, lengths);
    uses.set(use, [...(uses.get(use) ?? []), plain(joint.id)]);
  }
  const lines = [...uses].map(([use, joints]) => `- ${joints.join('; ')}: ${use}`);
  const rest = lines.length > MOST ? [`- and ${lines.length - MOST} more ways`] : [];
  return [...lines.slice(0, MOST), ...rest].join('\n');
}

function useOf(joint: FittedJoint, lengths: Lengths): string {
  const used = joint.lines.filter(({ use }) => use === 'used').map(({ fromZero }) => fromZero);
  const without = notUsed(joint).map(({ at, why }) => `not at ${lengths.list(at)}, ${why}`);
  return [used.length === 0 ? 'no slots' : `slots at ${lengths.list(used)} from zero`, ...without].join('; ');
}
