import { AstUtils, type CstNode, GrammarAST, isCompositeCstNode, isLeafCstNode, type LeafCstNode } from 'langium';

/** A stretch of a text, as offsets; `end` is exclusive. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** Words, marks and comments of a tree in the order they stand, those that a stretch touches if one is given. */
export function* leavesOf(node: CstNode | undefined, within?: Stretch): Generator<LeafCstNode> {
  if (node === undefined || (within && (node.end < within.start || node.offset > within.end))) return;
  if (isLeafCstNode(node)) {
    // A brace that the reader put in for one that is missing takes no room.
    if (node.length > 0) yield node;
  } else if (isCompositeCstNode(node)) for (const child of node.content) yield* leavesOf(child, within);
}

/** The grammar rule whose word or reference a leaf is. */
export function ruleOf({ grammarSource }: CstNode): string {
  return grammarSource === undefined
    ? ''
    : (AstUtils.getContainerOfType(grammarSource, GrammarAST.isParserRule)?.name ?? '');
}

/** True for a word of the language that stands for itself here, whatever else it could name. */
export const isWord = ({ grammarSource, text }: LeafCstNode): boolean =>
  GrammarAST.isKeyword(grammarSource) && /^\p{L}/u.test(text);

/** True if two stretches share a place, their ends included. */
export const touches = (a: Stretch, b: Stretch): boolean => a.start <= b.end && b.start <= a.end;
