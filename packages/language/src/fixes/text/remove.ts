import { type AstNode, isAstNode } from 'langium';
import { isParameter, isPart, isSilence, type PartLine } from '../../generated/ast.js';
import type { Case, Cure, FileEdit, Fix } from '../fix.js';
import { nodeOf, textAt } from '../support/node.js';
import { without } from '../support/place.js';

/** Takes out what has no effect: a name that nothing uses, or an allowance of what is not found. */
export const remove: Fix = {
  name: 'remove',
  codes: ['never-used', 'allow-unused', 'unknown-check'],
  safe: { 'allow-unused': 'what allows nothing changes nothing' },
  mayFollow: { 'never-used': 'it was used by nothing but what is taken out' },
  *offer(about): Iterable<Cure> {
    const silence = nodeOf(about, isSilence);
    if (silence) {
      yield {
        title: `Take out "allow ${silence.check} …"`,
        edits: [without(silence)],
        preferred: about.finding.code === 'allow-unused',
      };
      return;
    }
    const named = nodeOf(about, isNamed);
    if (named) yield { title: `Take out ${textAt(about)}`, edits: [withoutNamed(named, about)] };
  },
};

const isNamed = (node: unknown): node is AstNode =>
  isAstNode(node) && (isPart(node) || isParameter(node) || node.$container?.$type === 'File');

/** A part that shares its line with others goes alone, with its comma. */
function withoutNamed(node: AstNode, { document }: Case): FileEdit {
  if (!isPart(node)) return without(node);
  const line = node.$container as PartLine;
  const at = line.parts.indexOf(node);
  const [before, after] = [line.parts[at - 1]?.$cstNode, line.parts[at + 1]?.$cstNode];
  const { offset = 0, end = 0 } = node.$cstNode ?? {};
  const uri = document.uri.toString();
  if (after) return { uri, start: offset, end: after.offset, text: '' };
  if (before) return { uri, start: before.end, end, text: '' };
  return without(line);
}
