import { say } from '@dryfit/engine';
import { reporter } from '../findings/report.js';
import { silencesOf } from '../interpret/silences.js';
import type { FileCheck } from './file-check.js';

/** A check is allowed, and why is left open. */
export const noReason = reporter('no-reason', 'warning');

/** What stands in the place of a reason until one is written. */
export const REASON_TO_COME = 'say why here';

export const withoutReason: FileCheck = ({ file, places }) =>
  silencesOf(file)
    .filter(({ reason }) => reason !== undefined && /^(\W*|say why here\W*)$/.test(reason.trim()))
    .map((node) =>
      noReason({
        source: places.property(node, 'reason'),
        message: say`${node.check} is allowed here and nothing says why: whoever makes the cabinet cannot tell whether it was thought of`,
        cure: say`Write why it may be so, in the quotes.`,
      }),
    );
