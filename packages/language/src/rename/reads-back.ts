import { GrammarAST, type LeafCstNode } from 'langium';
import type { Edit } from '../format/edits.js';
import type { Reader } from '../format/pieces.js';
import { leavesOf } from '../tree/leaves.js';

/**
 * True if a text with other names in some places is read as it was: the same words in the same places of the grammar,
 * with no more and no fewer errors.
 */
export function readsBack(text: string, edits: readonly Edit[], reader: Reader): boolean {
  const [before, after] = [reader.parse(text), reader.parse(applied(text, edits))];
  const errors = ({ parserErrors, lexerErrors }: typeof before) => parserErrors.length + lexerErrors.length;
  if (errors(before) !== errors(after)) return false;
  const [old, now] = [before, after].map(({ value }) => [...leavesOf(value.$cstNode)].filter(({ hidden }) => !hidden));
  const renamed = new Map(edits.map((edit) => [edit.start, edit.text]));
  return (
    old?.length === now?.length &&
    (old ?? []).every((leaf, index) => {
      const other = now?.[index];
      return other?.text === (renamed.get(leaf.offset) ?? leaf.text) && placeOf(leaf) === placeOf(other);
    })
  );
}

/** A text with its edits made. */
export function applied(text: string, edits: readonly Edit[]): string {
  let [done, at] = ['', 0];
  for (const edit of [...edits].sort((a, b) => a.start - b.start)) {
    done += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return done + text.slice(at);
}

/** What a word is in the grammar, and of what. */
function placeOf({ grammarSource, astNode }: LeafCstNode): string {
  const rule = GrammarAST.isKeyword(grammarSource) ? grammarSource.value : (grammarSource?.$cstNode?.text ?? '');
  return `${grammarSource?.$type} ${grammarSource?.$containerProperty} ${rule} ${pathOf(astNode)}`;
}

function pathOf(node: LeafCstNode['astNode'] | undefined): string {
  const steps: string[] = [];
  for (let one = node; one; one = one.$container)
    steps.push(`${one.$type} ${one.$containerProperty} ${one.$containerIndex}`);
  return steps.join(' in ');
}
