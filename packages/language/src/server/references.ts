import { type AstNode, type CstNode, DefaultReferences, GrammarUtils } from 'langium';
import { isPartRef } from '../generated/ast.js';

/** Langium's references; the number of a part, as in `shelf 2`, stands for what the name before it stands for. */
export class JoineryReferences extends DefaultReferences {
  override findDeclarations(source: CstNode): AstNode[] {
    const found = super.findDeclarations(source);
    const node = source?.astNode;
    if (found.length > 0 || !isPartRef(node) || GrammarUtils.findAssignment(source)?.feature !== 'index') return found;
    return node.part?.ref ? [node.part.ref] : [];
  }
}
