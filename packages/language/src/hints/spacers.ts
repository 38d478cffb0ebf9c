import { axisOf, type FittedJoint, type Half, type Rational, type Spacer } from '@dryfit/engine';
import { type Fact, isSideFact, type Joint } from '../generated/ast.js';
import { jointHover } from '../hover/joint.js';
import type { Lengths } from '../hover/lengths.js';
import { stale } from '../hover/markdown.js';
import type { Fitted, Hint } from './hint.js';
import { endOfHead } from './statements.js';

/**
 * The spacers a joint asks for, each at the fact that sets its part back: the one that places the part's datum edge,
 * or else the joint's head, with the part's name.
 */
export function spacerHints(joint: Joint, id: string, fitted: Fitted): Hint[] {
  const why = () => stale(jointHover(fitted.result, id, fitted.lengths), fitted);
  const labels = new Map<number, Map<string, Set<string>>>();
  for (const made of fitted.result.fit.joints.filter(({ statement }) => statement === id)) {
    for (const half of made.halves.filter(({ setback }) => !setback.isZero())) {
      const fact = half.part === made.entering ? factOf(joint, half) : undefined;
      const offset = fact?.$cstNode?.end ?? endOfHead(joint);
      const at = labels.get(offset) ?? new Map<string, Set<string>>();
      const label = spacerWords(half.spacer, fitted.lengths);
      labels.set(offset, at.set(label, (at.get(label) ?? new Set()).add(half.part)));
    }
  }
  const entering = enteringOf(fitted.result.fit.joints, id);
  return [...labels].map(([offset, at]) => ({
    offset,
    label: [...at]
      .map(([label, parts]) => (at.size === 1 && sameParts(parts, entering) ? label : `${names(parts)}: ${label}`))
      .join(', '),
    why,
  }));
}

/** `spacer 22 = 10 + 12`. */
export function spacerWords({ kind, width, stack }: Spacer, lengths: Lengths): string {
  const wanted = `spacer ${lengths.of(width)}`;
  const stacked = stack.map((piece) => lengths.of(piece)).join(' + ');
  switch (kind) {
    case 'cut':
      return `${wanted}, cut to measure`;
    case 'missing':
      return stack.length === 0
        ? `${wanted}, not in stock`
        : `${wanted}, not in stock: nearest ${total(stack, lengths)} = ${stacked}`;
    case 'mark out':
      return `set back ${lengths.of(width)}: mark out`;
    default:
      return stack.length === 1 && stacked === lengths.of(width) ? wanted : `${wanted} = ${stacked}`;
  }
}

const total = (stack: readonly Rational[], lengths: Lengths): string =>
  stack.length === 0 ? '0' : lengths.of(stack.reduce((sum, piece) => sum.add(piece)));

/** The fact that places the datum edge of the entering part. */
function factOf(joint: Joint, { datum }: Half): Fact | undefined {
  const placing = joint.facts.filter(isSideFact);
  const along = ({ side }: { side?: string }) => side !== undefined && axisOf(side as Half['datum']) === axisOf(datum);
  return placing.find(({ side }) => side === datum) ?? placing.find(along);
}

const enteringOf = (joints: readonly FittedJoint[], id: string): ReadonlySet<string> =>
  new Set(joints.filter(({ statement }) => statement === id).map(({ entering }) => entering));

const sameParts = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size === b.size && [...a].every((one) => b.has(one));

const names = (parts: ReadonlySet<string>): string => [...parts].join(' and ');
