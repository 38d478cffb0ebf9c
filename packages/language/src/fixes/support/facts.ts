import { Rational, render, type Text } from '@dryfit/engine';
import { isJoint, type Joint, type Fact as Node } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import type { Case, FileEdit } from '../fix.js';
import { writeInto } from './braces.js';
import { instead, statementOf } from './place.js';

/** The joint that a finding is about. */
export function jointOf(about: Case): Joint | undefined {
  const statement = statementOf(about);
  return isJoint(statement) ? statement : undefined;
}

/** Writes a fact into a joint, in the place of the one of its kind that is there. */
export function setFact(joint: Joint, line: string, isSame: (fact: Node) => boolean): FileEdit {
  const known = joint.facts.find(isSame);
  return known ? instead(known, line) : writeInto(joint, line);
}

/** Writes facts that may be in the joint already, each in the place of the one of its kind. */
export function setFacts(
  joint: Joint,
  facts: readonly { readonly line: string; readonly isSame: (fact: Node) => boolean }[],
): readonly FileEdit[] {
  const known = facts.map(({ isSame }) => joint.facts.find(isSame));
  const fresh = facts.filter((_, i) => !known[i]).map(({ line }) => line);
  const changed = facts.flatMap(({ line }, i) => {
    const fact = known[i];
    return fact ? [instead(fact, line)] : [];
  });
  return fresh.length > 0 ? [...changed, writeInto(joint, ...fresh)] : changed;
}

/** A title, with its lengths in the units of the file. */
export const titled = (text: Text, unit: Unit): string => render(text, { units: unit, unit: unit === 'in' });

/** Lengths in the order of their size, each once. */
export function distinct(lengths: readonly Rational[]): readonly Rational[] {
  const sorted = [...lengths].sort((a, b) => a.compare(b));
  return sorted.filter((length, i) => i === 0 || !length.equals(sorted[i - 1] ?? Rational.of(-1)));
}
