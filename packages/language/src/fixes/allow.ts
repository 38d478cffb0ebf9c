import { checkCodes } from '@dryfit/engine';
import { REASON_TO_COME } from '../checks/no-reason.js';
import type { Cure, Fix } from './fix.js';
import { writeInCabinet, writeInto } from './support/braces.js';
import { statementOf } from './support/place.js';

/** What stands in the place of a reason until one is written. */
export const NO_REASON = 'say why here';

/** Allows a check of the engine where it finds something, with a reason that is left to be written. */
export const allow: Fix = {
  name: 'allow',
  codes: checkCodes,
  mayFollow: { 'no-reason': 'the reason is left to whoever allows it' },
  *offer(about): Iterable<Cure> {
    const { finding, cabinet } = about;
    const line = `allow ${finding.code} "${REASON_TO_COME}"`;
    const statement = statementOf(about);
    if (statement && statement.$type !== 'PartLine' && statement.$type !== 'Parameter') {
      yield { title: `Allow ${finding.code} here, and say why`, edits: [writeInto(statement, line)] };
    } else if (cabinet) {
      yield { title: `Allow ${finding.code} in ${cabinet.name}, and say why`, edits: [writeInCabinet(cabinet, line)] };
    }
  },
};
