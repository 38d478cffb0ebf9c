import { type AstNode, type CompositeCstNode, type CstNode, type ParseResult, RootCstNodeImpl } from 'langium';
import { type Entry, type File, isFile } from '../generated/ast.js';
import { changedStretch } from './stretch.js';
import { lineAndColumn, moveSyntax } from './syntax-moves.js';

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/**
 * The tree of a text from the tree of the text before it, where what changed lies in one entry or between two: only
 * that is read, and the other entries are taken over and moved, so that a key costs what its cabinet costs and not
 * what its file does. Undefined where it cannot be told for sure that reading the whole would give the same; the tree
 * before is then as it was.
 */
export function reparse(
  before: ParseResult,
  text: string,
  parse: (part: string) => ParseResult,
): ParseResult<File> | undefined {
  const old = before.value;
  const root = old.$cstNode as CompositeCstNode | undefined;
  if (!isFile(old) || !root || !isClean(before)) return undefined;
  const cut = cutOf(old, root, text);
  if (!cut) return undefined;
  const middle = text.slice(cut.from, cut.toNow);
  const read = parse(middle);
  const { value } = read;
  if (!isFile(value) || !isClean(read) || value.units.length + value.imports.length > 0) return undefined;
  // Paths count entries: one more or less would give all that follow another path.
  if (value.entries.length !== old.entries.length - cut.head - cut.tail) return undefined;
  return { ...before, value: joined(old, root, value, cut, text) };
}

const isClean = ({ parserErrors, lexerErrors }: ParseResult): boolean =>
  parserErrors.length === 0 && lexerErrors.length === 0;

/** Which entries stay, and the stretch between them in the text before and now. */
interface Cut {
  /** Number of entries before the stretch, and after it. */
  readonly head: number;
  readonly tail: number;
  readonly from: number;
  readonly toBefore: number;
  readonly toNow: number;
}

function cutOf(old: File, root: CompositeCstNode, text: string): Cut | undefined {
  const oldText = root.root.fullText;
  const { start, endBefore, endNow } = changedStretch(oldText, text);
  const { entries } = old;
  let head = 0;
  while (head < entries.length && endsBefore(entries[head], oldText, start)) head += 1;
  let tail = 0;
  while (tail < entries.length - head && (entries[entries.length - 1 - tail]?.$cstNode?.offset ?? 0) >= endBefore)
    tail += 1;
  if (head + tail === 0) return undefined;
  const above = Math.max(0, ...[...old.units, ...old.imports].map(({ $cstNode }) => $cstNode?.end ?? 0));
  const from = head > 0 ? (entries[head - 1]?.$cstNode?.end ?? 0) : above;
  if (above > from || (head === 0 && start <= above)) return undefined;
  const next = tail > 0 ? entries[entries.length - tail]?.$cstNode?.offset : undefined;
  const toBefore = next ?? oldText.length;
  const toNow = toBefore - endBefore + endNow;
  // What follows has to begin on a line of its own, beyond the reach of a word or a comment in front of it.
  if (next !== undefined && !/[\r\n][ \t]*$/.test(text.slice(from, toNow))) return undefined;
  return { head, tail, from, toBefore, toNow };
}

/** An entry that ends with its brace ends there whatever follows. */
const endsBefore = (entry: Entry | undefined, text: string, start: number): boolean => {
  const end = entry?.$cstNode?.end;
  return end !== undefined && end <= start && text[end - 1] === '}';
};

function joined(old: File, root: CompositeCstNode, read: File, cut: Cut, text: string): File {
  const oldText = root.root.fullText;
  const begin = lineAndColumn(text, cut.from);
  const content = (read.$cstNode as CompositeCstNode | undefined)?.content ?? [];
  for (const node of content)
    moveSyntax(node, { offset: cut.from, lines: begin.line, firstLine: 0, columns: begin.column });
  const rest = root.content.filter((node) => node.offset >= cut.toBefore);
  const [was, is] = [lineAndColumn(oldText, cut.toBefore), lineAndColumn(text, cut.toNow)];
  const move = {
    offset: cut.toNow - cut.toBefore,
    lines: is.line - was.line,
    firstLine: was.line,
    columns: is.column - was.column,
  };
  if (move.offset !== 0 || move.lines !== 0 || move.columns !== 0) for (const node of rest) moveSyntax(node, move);

  const tree = new RootCstNodeImpl(text);
  tree.grammarSource = root.grammarSource;
  tree.content = [...root.content.filter((node) => node.end <= cut.from), ...content, ...rest];
  for (const node of tree.content) (node as Writable<CstNode>).container = tree;
  const { entries } = old;
  const file: File = {
    ...old,
    entries: [...entries.slice(0, cut.head), ...read.entries, ...entries.slice(entries.length - cut.tail)],
    $cstNode: tree,
  };
  tree.astNode = file;
  for (const list of [file.units, file.imports, file.entries] as readonly (readonly AstNode[])[]) {
    for (const [index, node] of list.entries())
      Object.assign(node as Writable<AstNode>, { $container: file, $containerIndex: index });
  }
  return file;
}
