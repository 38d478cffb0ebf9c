import { isAstNode } from 'langium';
import { isPart } from '../../generated/ast.js';
import type { Named } from '../../scope/names.js';
import type { Cure, Fix } from '../fix.js';
import { nodeOf, textAt } from '../support/node.js';
import { without } from '../support/place.js';

const FREED = 'what meant either of the two means the first one now';

/** Gives the second of two things of one name another, or takes it out. */
export const otherName: Fix = {
  name: 'other-name',
  codes: ['duplicate-name'],
  mayFollow: {
    'never-used': FREED,
    'part-not-fixed': FREED,
    'part-unattached': FREED,
  },
  *offer(about): Iterable<Cure> {
    const { finding, document } = about;
    const again = nodeOf(about, isNamed);
    if (!again) return;
    if (again.name !== undefined && textAt(about) === again.name) {
      const text = document.textDocument.getText();
      const name = free(again.name, text);
      yield { title: `Call this one ${name}`, edits: [{ ...finding.source, text: name }] };
      if (isPart(again)) {
        if (again.$container.parts.length === 1)
          yield { title: `Take this ${again.name} out`, edits: [without(again.$container)] };
        return;
      }
    }
    yield { title: `Take this ${again.name ?? textAt(about)} out`, edits: [without(again)] };
  },
};

/** A name with the first number behind it that the text does not have. */
function free(name: string, text: string): string {
  let number = 2;
  while (new RegExp(`\\b${name}${number}\\b`, 'u').test(text)) number++;
  return `${name}${number}`;
}

const isNamed = (node: unknown): node is Named =>
  isAstNode(node) && (isPart(node) || node.$type === 'Parameter' || node.$container?.$type === 'File');
