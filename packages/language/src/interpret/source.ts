import type { Source } from '@dryfit/engine';
import { type AstNode, AstUtils, type CstNode, GrammarUtils } from 'langium';
import { type Binary, type Expression, isFile } from '../generated/ast.js';
import type { Anchor } from './anchor.js';

/** Where nodes of one file stand; with an anchor, places that move with it. */
export class Places {
  readonly uri: string;

  constructor(
    node: AstNode,
    private readonly anchor?: Anchor,
  ) {
    const root = AstUtils.findRootNode(node);
    this.uri = isFile(root) ? (root.$document?.uri.toString() ?? '') : '';
  }

  of(node: AstNode): Source {
    return this.at(node.$cstNode);
  }

  /** Where a property of a node stands, or the node if the text lacks it. */
  property(node: AstNode, property: string, index?: number): Source {
    return this.at(GrammarUtils.findNodeForProperty(node.$cstNode, property, index) ?? node.$cstNode);
  }

  keyword(node: AstNode, keyword: string): Source {
    return this.at(GrammarUtils.findNodeForKeyword(node.$cstNode, keyword) ?? node.$cstNode);
  }

  at(node: CstNode | undefined): Source {
    return this.place(node?.offset ?? 0, node?.end ?? 0);
  }

  /** An operation shares its syntax node with the whole of what it is part of; its own ends are its operands'. */
  expression(expression: Expression): Source {
    if (expression.$type !== 'Binary') return this.of(expression);
    const left = expression.left && this.expression(expression.left);
    const right = expression.right && this.expression(expression.right);
    const own = this.of(expression);
    return this.place(left?.start ?? own.start, right?.end ?? own.end);
  }

  operator(binary: Binary): Source {
    const left = binary.left && this.expression(binary.left);
    const right = binary.right && this.expression(binary.right);
    const root = binary.$cstNode?.root;
    if (!left || !right || !root) return this.of(binary);
    const between = root.fullText.slice(left.end, right.start);
    const at = withoutComments(between).indexOf(binary.operator);
    const start = left.end + Math.max(0, at);
    return this.place(start, start + 1);
  }

  private place(start: number, end: number): Source {
    return this.anchor?.place(this.uri, start, end) ?? { uri: this.uri, start, end };
  }
}

/** The text with blanks in the place of its comments, so that offsets stay. */
function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/[^\r\n]*/g, (comment) => ' '.repeat(comment.length));
}

/** The text of a node on one line, without comments. */
export function textOf(node: AstNode): string {
  return withoutComments(node.$cstNode?.text ?? '')
    .replace(/\s+/g, ' ')
    .trim();
}
