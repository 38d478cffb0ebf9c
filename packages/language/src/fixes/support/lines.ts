import { type Connect, type FittedJoint, isHigh, type Layout, Rational } from '@dryfit/engine';
import { isConnectFact, type Joint } from '../../generated/ast.js';
import type { Case, FileEdit } from '../fix.js';
import { setFact } from './facts.js';
import { writtenAs } from './figures.js';

/** The joint of the fit that a finding is about; the first of its statement if it names none. */
export function fittedOf({ finding, result }: Case): FittedJoint | undefined {
  const { joint, statement } = finding.about;
  const joints = result?.fit.joints ?? [];
  return joints.find(({ id }) => id === joint) ?? joints.find((other) => other.statement === statement);
}

/** Where the parts touch along the run, as distances from zero. */
export function stretchOf({
  contact,
  datum,
  zero,
}: FittedJoint): { readonly from: Rational; readonly to: Rational } | undefined {
  if (!contact || !datum || !zero) return undefined;
  const [a, b] = [contact.lo, contact.hi].map((at) => (isHigh(datum) ? zero.sub(at) : at.sub(zero))) as [
    Rational,
    Rational,
  ];
  return a.le(b) ? { from: a, to: b } : { from: b, to: a };
}

/** How a joint is connected: as it says, or as its cabinet does. */
export function connectOf(about: Case): Extract<Connect, { kind: 'by' }> | undefined {
  const { result, finding } = about;
  const statement = result?.spec.statements.find(({ id }) => id === finding.about.statement);
  const own = statement?.kind === 'joint' ? statement.connect : undefined;
  const connect = own ?? result?.spec.connect;
  return connect?.kind === 'by' ? connect : undefined;
}

/** The layout behind a connection, named or written in place. */
export function layoutOf({ result }: Case, { pattern }: Extract<Connect, { kind: 'by' }>): Layout | undefined {
  return typeof pattern === 'string' ? result?.spec.shop.patterns.get(pattern)?.layout : pattern;
}

/** Lines as they are laid out for one joint, with those that do not land on it where the layout has them. */
export const linesOf = (joint: FittedJoint): readonly Rational[] => joint.lines.map(({ fromZero }) => fromZero);

/** The fact that gives a joint lines of its own. */
export function linesFact(
  { unit }: Case,
  connector: string,
  lines: readonly Rational[],
  skip?: Rational | undefined,
): string {
  const list = lines.map((line) => writtenAs(line, unit)).join(', ');
  return `connect ${connector} by lines ${list}${skip === undefined ? '' : ` skip within ${writtenAs(skip, unit)}`}`;
}

/** Gives a joint lines of its own. */
export function setLines(
  about: Case,
  joint: Joint,
  connector: string,
  lines: readonly Rational[],
  skip?: Rational | undefined,
): FileEdit {
  return setFact(joint, linesFact(about, connector, lines, skip), isConnectFact);
}

/** The skip of a layout that has one. */
export const skipOf = (layout: Layout | undefined): Rational | undefined =>
  layout?.kind === 'lines' ? layout.skip : undefined;

/** Half of the opening of a joint's slots and the shop's distance to an edge: how near to an end a line may come. */
export function leastFromEnd({ result }: Case, joint: FittedJoint): Rational {
  const half = Math.max(
    0,
    ...joint.halves.flatMap(({ slots }) => slots.map(({ length }) => length.value / 2 + length.error)),
  );
  const up = Rational.of(Math.ceil(half * 1000), 1000);
  return up.add(result?.spec.shop.limits.slotToEdge ?? Rational.ZERO);
}
