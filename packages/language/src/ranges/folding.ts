import type { LeafCstNode } from 'langium';
import type { File } from '../generated/ast.js';
import { leavesOf } from '../tree/leaves.js';

/** Lines that fold under their first, counted from 0. */
export interface Fold {
  readonly first: number;
  readonly last: number;
  readonly kind?: 'comment' | 'imports' | 'region' | undefined;
}

/**
 * What folds: braces that span lines, their closing line left in sight; comments of several lines; imports; and what
 * stands between `// #region` and `// #endregion`. In the order of their first lines.
 */
export function foldsOf(file: File): Fold[] {
  const leaves = [...leavesOf(file.$cstNode)];
  const folds = [...blocks(leaves), ...comments(leaves), ...regions(leaves), ...imports(file)];
  return folds.filter(({ first, last }) => last > first).sort((a, b) => a.first - b.first || b.last - a.last);
}

function blocks(leaves: readonly LeafCstNode[]): Fold[] {
  const open: number[] = [];
  const folds: Fold[] = [];
  for (const { hidden, text, range } of leaves) {
    if (hidden) continue;
    if (text === '{') open.push(range.start.line);
    if (text !== '}') continue;
    const first = open.pop();
    if (first !== undefined) folds.push({ first, last: range.start.line - 1 });
  }
  return folds;
}

const isLineComment = ({ hidden, text }: LeafCstNode): boolean => hidden && text.startsWith('//');

/** Comments between asterisks, and those of lines that follow each other and begin with one. */
function comments(leaves: readonly LeafCstNode[]): Fold[] {
  const folds: Fold[] = [];
  let run: Fold | undefined;
  const end = () => {
    if (run) folds.push(run);
    run = undefined;
  };
  let before = -1;
  for (const leaf of leaves) {
    const { start, end: stop } = leaf.range;
    if (leaf.hidden && leaf.text.startsWith('/*')) folds.push({ first: start.line, last: stop.line, kind: 'comment' });
    if (isLineComment(leaf) && start.line > before && !marks(leaf)) {
      if (run && run.last + 1 < start.line) end();
      run = { first: run?.first ?? start.line, last: start.line, kind: 'comment' };
    } else if (!/^\s*$/.test(leaf.text)) end();
    before = /^\s*$/.test(leaf.text) ? before : stop.line;
  }
  end();
  return folds;
}

const marks = ({ text }: LeafCstNode): string | undefined => /^\/\/\s*#(region|endregion)\b/.exec(text)?.[1];

function regions(leaves: readonly LeafCstNode[]): Fold[] {
  const open: number[] = [];
  const folds: Fold[] = [];
  for (const leaf of leaves.filter(isLineComment)) {
    const mark = marks(leaf);
    const line = leaf.range.start.line;
    if (mark === 'region') open.push(line);
    const first = mark === 'endregion' ? open.pop() : undefined;
    if (first !== undefined) folds.push({ first, last: line, kind: 'region' });
  }
  return folds;
}

function imports(file: File): Fold[] {
  const lines = file.imports.flatMap(({ $cstNode: cst }) => (cst ? [cst.range] : []));
  const [first, last] = [lines[0], lines.at(-1)];
  return first && last ? [{ first: first.start.line, last: last.end.line, kind: 'imports' }] : [];
}
