import type { Cure, Fix } from '../fix.js';
import { without } from '../support/place.js';

/** Leaves out one of two files that bring the same, where nothing else of it is wanted. */
export const oneImport: Fix = {
  name: 'one-import',
  codes: ['import-clash'],
  mayFollow: { 'never-measured': 'the sheet is taken from the other file now' },
  *offer({ file }): Iterable<Cure> {
    for (const line of [...file.imports].reverse())
      yield { title: `Import "${line.path}" no more`, edits: [without(line)] };
  },
};
