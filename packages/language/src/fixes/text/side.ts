import { opposite, SIDES, type Side } from '@dryfit/engine';
import { isSideFact, type SideFact } from '../../generated/ast.js';
import { leavesOf } from '../../tree/leaves.js';
import type { Case, Cure, FileEdit, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { nodeOf } from '../support/node.js';

/** Names the side that can be meant where one is named that cannot. */
export const side: Fix = {
  name: 'side',
  codes: ['wrong-side', 'flush-sides-differ', 'against-same-way'],
  most: 3,
  mayFollow: hiddenUntilRead(READ),
  *offer(about): Iterable<Cure> {
    const fact = nodeOf(about, isSideFact);
    const between = fact && relationOf(fact, about);
    if (fact && between && about.finding.code !== 'wrong-side') yield* otherRelation(fact, between, about);
    yield* otherSide(about);
  },
};

/** The words `flush with` or `against` of a fact. */
function relationOf({ relation, $cstNode: cst }: SideFact, { document }: Case): FileEdit | undefined {
  const words = relation === 'flush' ? /\bflush\s+with\b/ : /\bagainst\b/;
  const found = words.exec(cst?.text ?? '');
  if (!cst || !found) return undefined;
  const start = cst.offset + found.index;
  return { uri: document.uri.toString(), start, end: start + found[0].length, text: '' };
}

/** Sides that look at each other touch; those that look the same way are flush. */
function* otherRelation(fact: SideFact, words: FileEdit, { finding }: Case): Iterable<Cure> {
  const other = fact.at.side;
  if (other === undefined || fact.side === undefined) return;
  const name = fact.at.$cstNode?.text ?? '';
  if (finding.code === 'flush-sides-differ' && other === opposite(fact.side))
    yield { title: `Write "${fact.side} against ${name}"`, edits: [{ ...words, text: 'against' }] };
  if (finding.code === 'against-same-way' && other === fact.side)
    yield { title: `Write "${fact.side} flush with ${name}"`, edits: [{ ...words, text: 'flush with' }] };
}

/** The side that the finding points at, then the one that the fact begins with. */
function* otherSide(about: Case): Iterable<Cure> {
  const { file, finding } = about;
  const [own, fact] = [finding.source, nodeOf(about, isSideFact)?.$cstNode];
  const words = [...leavesOf(file.$cstNode, own)]
    .filter(({ offset, end, hidden }) => !hidden && offset >= own.start && end <= own.end)
    .filter(({ text }) => isSide(text));
  const first = [...leavesOf(fact)].find(({ text }) => isSide(text));
  for (const word of new Set([words.at(-1), first])) {
    if (!word) continue;
    const now = word.text as Side;
    for (const other of [opposite(now), ...SIDES.filter((side) => side !== now && side !== opposite(now))])
      yield {
        title: `Write ${other} instead of ${now}`,
        edits: [{ uri: own.uri, start: word.offset, end: word.end, text: other }],
      };
  }
}

const isSide = (text: string): boolean => SIDES.includes(text as Side);
