import type { Cure, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';

/** Puts the name or number in place that was meant, everywhere the finding tells of. */
export const didYouMean: Fix = {
  name: 'did-you-mean',
  codes: ['unknown-name', 'unknown-check', 'hyphened-fraction'],
  safe: {
    'unknown-check': 'which findings are put up with changes no size',
    'hyphened-fraction': 'the number is read like this already, and refused only until it is written so',
  },
  mayFollow: {
    ...hiddenUntilRead(READ),
    'one-part-wanted': 'the name stands for several parts, of which the statement wants one',
    'never-used': 'the mistyped use was thought to be one of another name',
  },
  *offer({ finding }): Iterable<Cure> {
    const { instead } = finding.data ?? {};
    if (typeof instead !== 'string') return;
    const places = [finding.source, ...finding.related.map(({ source }) => source)];
    yield {
      title: `Write ${instead}`,
      edits: places.map(({ uri, start, end }) => ({ uri, start, end, text: instead })),
      preferred: true,
    };
  },
};
