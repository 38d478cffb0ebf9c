import { checkCodes, say } from '@dryfit/engine';
import { nearest } from '../findings/nearest.js';
import { reporter } from '../findings/report.js';
import { silencesOf } from '../interpret/silences.js';
import type { FileCheck } from './file-check.js';

/** A check is allowed that does not exist, or that cannot be allowed. */
export const unknownCheck = reporter('unknown-check', 'warning');

/** Findings of the language that a cabinet may allow; its errors leave nothing to go on with. */
export const ALLOWED_HERE: readonly string[] = ['never-used', 'name-of-a-side'];

export const unknownChecks: FileCheck = ({ file, places }) => {
  const codes = [...checkCodes, ...ALLOWED_HERE];
  return silencesOf(file)
    .filter(({ check }) => check !== undefined && !codes.includes(check))
    .map((node) => {
      const meant = nearest(node.check, codes);
      return unknownCheck({
        source: places.property(node, 'check'),
        message: say`there is no check called ${node.check} that can be allowed`,
        cure: meant === undefined ? say`Write the name that the finding shows.` : say`Did you mean ${meant}?`,
        ...(meant === undefined ? {} : { data: { instead: meant } }),
      });
    });
};
