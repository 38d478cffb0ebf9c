import { checkCodes } from '@dryfit/engine';
import { ALLOWED_HERE } from '../checks/unknown-check.js';
import { checkHover } from '../hover/check.js';
import { type Offer, RANK } from './offer.js';
import { statementId } from './run.js';
import type { Situation } from './situation.js';

/** Checks that can be allowed: those that have found something here first. */
export function checkOffers(situation: Situation): Offer[] {
  const { cabinet, around, inJoint } = situation;
  const result = cabinet && around.found(cabinet);
  const statement = statementId(situation);
  const found = new Map<string, number>();
  for (const { code, about } of [...(result?.findings ?? []), ...(result?.silenced ?? [])])
    if (!inJoint || about.statement === statement) found.set(code, (found.get(code) ?? 0) + 1);
  return [...checkCodes, ...(inJoint ? [] : ALLOWED_HERE)].map((label) => {
    const count = found.get(label) ?? 0;
    const here = inJoint ? 'of this joint' : 'of this cabinet';
    return {
      label,
      kind: 'check',
      rank: count > 0 ? RANK.found : RANK.also,
      detail: count > 0 ? `${count} finding${count === 1 ? '' : 's'} ${here}` : undefined,
      documentation: checkHover(label),
    };
  });
}
