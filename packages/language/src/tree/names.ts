import { type AstNode, GrammarUtils } from 'langium';
import type { Stretch } from './leaves.js';

/** Where the name of a thing stands that has one of its own; else its first word. */
export function nameStretch(node: AstNode): Stretch | undefined {
  const cst = node.$cstNode;
  if (cst === undefined) return undefined;
  const own = 'name' in node ? GrammarUtils.findNodeForProperty(cst, 'name') : undefined;
  if (own) return { start: own.offset, end: own.end };
  const word = /^\S+/.exec(cst.text)?.[0] ?? '';
  return { start: cst.offset, end: cst.offset + word.length };
}
