import { isNegative } from '../../generated/ast.js';
import type { Cure, Fix } from '../fix.js';
import { nodeOf } from '../support/node.js';
import { instead } from '../support/place.js';

/** Takes the minus off a figure that cannot be below nothing. */
export const sign: Fix = {
  name: 'sign',
  codes: ['setting-wrong'],
  *offer(about): Iterable<Cure> {
    const negative = nodeOf(about, isNegative, {
      start: about.finding.source.start,
      end: about.finding.source.start + 1,
    });
    const bare = negative?.value?.$cstNode?.text;
    if (negative && bare !== undefined)
      yield { title: `Write ${bare}`, edits: [instead(negative, bare)], preferred: true };
  },
};
