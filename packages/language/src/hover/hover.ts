import { AstUtils, CstUtils, GrammarAST, type LeafCstNode } from 'langium';
import {
  type ConnectFact,
  type File,
  isCabinet,
  isConnectFact,
  isEnd,
  isImport,
  isJobLine,
  isJoint,
  isLiteral,
  isPartRef,
  isPattern,
  isPlane,
  type Pattern,
} from '../generated/ast.js';
import { statementOf } from '../interpret/joint.js';
import { unitOf } from '../interpret/units.js';
import { checkHover } from './check.js';
import { declarationHover } from './declaration.js';
import { importHover } from './import.js';
import { jobLineHover } from './job-line.js';
import type { Knowledge } from './knowledge.js';
import { Lengths } from './lengths.js';
import { paragraphs, stale } from './markdown.js';
import { literalHover } from './number.js';
import { patternUse } from './pattern-use.js';
import { endHover, partRefHover } from './reference.js';
import { wordHover } from './word.js';

/** A hover: markdown, and the offsets of what it is about. */
export interface Hover {
  readonly markdown: string;
  readonly start: number;
  readonly end: number;
}

/** What is to be said about a place in a file; undefined where there is nothing. */
export function hoverAt(file: File, offset: number, knowledge: Knowledge): Hover | undefined {
  const leaf = leafAt(file, offset);
  if (leaf === undefined) return undefined;
  const lengths = new Lengths(unitOf(file));
  const whole = wholeOf(leaf);
  const markdown = about(leaf, knowledge, lengths);
  return markdown === undefined ? undefined : { markdown, start: whole.offset, end: whole.end };
}

function about(leaf: LeafCstNode, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const node = leaf.astNode;
  const rule = ruleOf(leaf);
  if (rule === 'CheckName') return checkHover(wholeOf(leaf).text);
  if (isLiteral(node)) return literalHover(node, lengths.units);
  if (isPartRef(node)) return partRefHover(node, knowledge, lengths);
  if (rule === 'Side' && (isPlane(node) || isEnd(node))) return endHover(node, knowledge, lengths);
  if (isImport(node) && !GrammarAST.isKeyword(leaf.grammarSource)) return importHover(node, knowledge);
  if (isJobLine(node) && rule === 'JobLine') {
    const text = GrammarAST.isKeyword(leaf.grammarSource) ? undefined : jobLineHover(node, knowledge, lengths);
    if (text !== undefined) return text;
  }
  if (GrammarAST.isKeyword(leaf.grammarSource)) return wordHover(leaf.text, rule, node, knowledge, lengths);
  const declared = knowledge.declaration(leaf);
  const text = declared && declarationHover(declared, knowledge, lengths);
  return isPattern(declared) && isConnectFact(node)
    ? paragraphs(text, useHere(node, declared, knowledge, lengths))
    : text;
}

/** What becomes of a pattern's lines in the joint that takes it, or in all joints that take it from the cabinet. */
function useHere(fact: ConnectFact, pattern: Pattern, knowledge: Knowledge, lengths: Lengths): string {
  const cabinet = AstUtils.getContainerOfType(fact, isCabinet);
  const fitted = cabinet && knowledge.fitted(cabinet);
  const joint = fact.$container;
  if (fitted === undefined) return '';
  const use = patternUse(fitted.result, pattern.name, isJoint(joint) ? statementOf(joint) : undefined, lengths);
  return use === '' ? '' : stale(use, fitted);
}

/** The word at a place, or the one that ends there. */
function leafAt({ $cstNode: root }: File, offset: number): LeafCstNode | undefined {
  const at = (place: number) => {
    const leaf = root && place >= 0 ? CstUtils.findLeafNodeAtOffset(root, place) : undefined;
    return leaf !== undefined && !leaf.hidden && leaf.offset <= place && place < leaf.end ? leaf : undefined;
  };
  return at(offset) ?? at(offset - 1);
}

/** A name with its number, and the name of a check, are hovered as one. */
function wholeOf(leaf: LeafCstNode): { readonly offset: number; readonly end: number; readonly text: string } {
  const whole =
    ruleOf(leaf) === 'CheckName' ? leaf.container : isPartRef(leaf.astNode) ? leaf.astNode.$cstNode : undefined;
  return whole ?? leaf;
}

function ruleOf({ grammarSource }: LeafCstNode): string {
  return AstUtils.getContainerOfType(grammarSource, GrammarAST.isParserRule)?.name ?? '';
}
