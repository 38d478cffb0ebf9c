import { ALLOWED_HERE } from '../../checks/unknown-check.js';
import { NO_REASON } from '../allow.js';
import type { Cure, Fix } from '../fix.js';
import { writeInCabinet } from '../support/braces.js';

/** Allows what the language finds and a cabinet may have on purpose, with a reason that is left to be written. */
export const allowText: Fix = {
  name: 'allow-text',
  codes: ALLOWED_HERE,
  mayFollow: { 'no-reason': 'the reason is left to be written' },
  *offer({ finding, cabinet }): Iterable<Cure> {
    if (!cabinet) return;
    const line = `allow ${finding.code} "${NO_REASON}"`;
    yield { title: `Allow ${finding.code} in ${cabinet.name}, and say why`, edits: [writeInCabinet(cabinet, line)] };
  },
};
