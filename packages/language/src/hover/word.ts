import { type AstNode, AstUtils } from 'langium';
import { isCabinet, isChanges, isJoint, isLimits, isPose, isTolerances, type Joint } from '../generated/ast.js';
import { statementOf } from '../interpret/joint.js';
import { declarationHover } from './declaration.js';
import { jointHover } from './joint.js';
import type { Knowledge } from './knowledge.js';
import type { Lengths } from './lengths.js';
import { paragraphs, stale } from './markdown.js';
import { wordLine } from './words.js';

/** A word of the language: what it means; and before that the joint whose head it stands in, or the entry it opens. */
export function wordHover(
  word: string,
  rule: string,
  node: AstNode,
  knowledge: Knowledge,
  lengths: Lengths,
): string | undefined {
  const means = wordLine(word, rule);
  const joint = rule === 'Pair' ? node.$container : node;
  if (isJoint(joint) && ['Verb', 'Joint', 'Pair'].includes(rule)) {
    const text = jointOf(joint, knowledge, lengths);
    if (text !== undefined) return paragraphs(text, rule === 'Verb' ? means : '');
  }
  if (word === 'pose' || word === 'limits' || word === 'tolerances') {
    if (isPose(node) || isLimits(node) || isTolerances(node) || isChanges(node))
      return declarationHover(node, knowledge, lengths);
  }
  return means;
}

function jointOf(joint: Joint, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const cabinet = AstUtils.getContainerOfType(joint, isCabinet);
  const fitted = cabinet && knowledge.fitted(cabinet);
  if (cabinet === undefined || fitted === undefined) return undefined;
  return stale(jointHover(fitted.result, statementOf(joint), lengths), fitted);
}
