import { isPart } from '../../generated/ast.js';
import { namesOfCabinet } from '../../scope/names.js';
import type { Cure, FileEdit, Fix } from '../fix.js';
import { nodeOf } from '../support/node.js';

/** Calls a part by another name than a side has, wherever it is named. */
export const renamePart: Fix = {
  name: 'rename-part',
  codes: ['name-of-a-side'],
  mayFollow: Object.fromEntries(
    ['parts-overlap', 'look-alike', 'handed', 'slots-collide', 'cannot-be-assembled'].map((code) => [
      code,
      'of several parts, it is told where the one stands whose name comes first',
    ]),
  ),
  safe: { 'name-of-a-side': 'it is the same part by another name' },
  *offer(about): Iterable<Cure> {
    const { finding, document, cabinet } = about;
    const part = nodeOf(about, isPart);
    const instead = finding.data?.instead;
    if (!part || !cabinet || typeof instead !== 'string') return;
    const taken = namesOfCabinet(cabinet);
    const names = [instead, `${part.name}panel`, `${instead}panel`];
    const name = names.find((one) => !taken.parts.has(one) && !taken.parameters.has(one));
    if (name === undefined) return;
    const uses = document.references.flatMap((reference): FileEdit[] => {
      const { $refNode: at } = reference;
      if (!at || !('ref' in reference) || reference.ref !== part) return [];
      return [{ uri: finding.source.uri, start: at.offset, end: at.end, text: name }];
    });
    yield { title: `Call it ${name}`, edits: [{ ...finding.source, text: name }, ...uses], preferred: true };
  },
};
