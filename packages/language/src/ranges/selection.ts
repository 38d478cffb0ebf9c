import { type AstNode, type CstNode, CstUtils, isCompositeCstNode, isLeafCstNode } from 'langium';
import { type Expression, type File, isBinary } from '../generated/ast.js';
import { Places } from '../interpret/source.js';
import type { Stretch } from '../tree/leaves.js';

/**
 * What a selection at a place grows to, the smallest first: word, expression, fact, what a pair of braces holds, the
 * braces, the statement, the cabinet, the file. Each holds the one before it and is larger.
 */
export function selectionsAt(file: File, offset: number): Stretch[] {
  const root = file.$cstNode;
  if (root === undefined) return [];
  const found: Stretch[] = [];
  const leaf = CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeAtOffset(root, offset - 1);
  const touched = leaf && leaf.offset <= offset && offset <= leaf.end && /\S/.test(leaf.text) ? leaf : undefined;
  if (touched && isText(touched.text)) found.push({ start: touched.offset + 1, end: touched.end - 1 });
  for (let node: CstNode | undefined = touched ?? innermost(root, offset); node; node = node.container) {
    if (isLeafCstNode(node)) found.push({ start: node.offset, end: node.end });
    else {
      found.push(...operations(node.astNode, offset), ...braces(node, offset));
      found.push({ start: node.offset, end: node.end });
    }
  }
  found.push({ start: 0, end: root.root.fullText.length });
  return growing(found, offset);
}

const isText = (text: string): boolean => text.length > 2 && text.startsWith('"') && text.endsWith('"');

/** The smallest thing around a place where no word stands. */
function innermost(node: CstNode, offset: number): CstNode {
  const inner = isCompositeCstNode(node)
    ? node.content.find((child) => isCompositeCstNode(child) && child.offset < offset && offset < child.end)
    : undefined;
  return inner === undefined ? node : innermost(inner, offset);
}

/** What an operation's parts take up, which share one node of the syntax. */
function operations(node: AstNode, offset: number): Stretch[] {
  if (!isBinary(node)) return [];
  const places = new Places(node);
  const found: Stretch[] = [];
  for (let one: Expression | undefined = node; one; ) {
    const { start, end } = places.expression(one);
    found.unshift({ start, end });
    const sides: (Expression | undefined)[] = isBinary(one) ? [one.left, one.right] : [];
    one = sides.find((side) => side && holds(places.expression(side), offset));
  }
  return found;
}

/** Between the braces of a node, and with them. */
function braces(node: CstNode, offset: number): Stretch[] {
  if (!isCompositeCstNode(node)) return [];
  const brace = (text: string) =>
    node.content.find((child) => isLeafCstNode(child) && !child.hidden && child.text === text);
  const [open, close] = [brace('{') ?? brace('('), brace('}') ?? brace(')')];
  if (!open || !close || offset < open.end || offset > close.offset) return [];
  const text = node.root.fullText.slice(open.end, close.offset);
  const start = open.end + (text.length - text.trimStart().length);
  return [
    { start: Math.min(start, close.offset), end: Math.max(start, open.end + text.trimEnd().length) },
    { start: open.offset, end: close.end },
  ];
}

const holds = ({ start, end }: Stretch, offset: number): boolean => start <= offset && offset <= end;

/** Those that hold the place and all before them, each once. */
function growing(found: readonly Stretch[], offset: number): Stretch[] {
  const kept: Stretch[] = [];
  for (const one of found) {
    const last = kept.at(-1);
    const larger =
      last === undefined ||
      (one.start <= last.start && one.end >= last.end && one.end - one.start > last.end - last.start);
    if (larger && holds(one, offset)) kept.push(one);
  }
  return kept;
}
