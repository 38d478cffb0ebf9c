import { type AstNode, CstUtils } from 'langium';
import type { Case } from '../fix.js';

/** A stretch of the text, as offsets; `end` is exclusive. */
interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** The innermost thing of a kind that holds a stretch of the text, by default the finding's. */
export function nodeOf<T extends AstNode>(
  { file, finding }: Case,
  is: (node: unknown) => node is T,
  { start, end }: Stretch = finding.source,
): T | undefined {
  const root = file.$cstNode;
  let node: AstNode | undefined = root && CstUtils.findLeafNodeAtOffset(root, start)?.astNode;
  for (; node; node = node.$container) {
    const cst = node.$cstNode;
    if (is(node) && cst && cst.offset <= start && end <= cst.end) return node;
  }
  return undefined;
}

/** The text of the finding's place. */
export const textAt = ({ document, finding }: Case, { start, end }: Stretch = finding.source): string =>
  document.textDocument.getText().slice(start, end);
