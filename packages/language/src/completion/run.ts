import { type FitResult, type FittedJoint, Rational } from '@dryfit/engine';
import { statementOf } from '../interpret/joint.js';
import type { Situation } from './situation.js';

/** What was last found for the joint whose braces are open, or for the joints that take the cabinet's connectors. */
export function foundJoints({ cabinet, joint, inJoint, around }: Situation): readonly FittedJoint[] {
  const result = cabinet && around.found(cabinet);
  if (result === undefined) return [];
  if (!inJoint) return general(result);
  const id = joint && statementOf(joint);
  return result.fit.joints.filter(({ statement }) => statement === id);
}

function general({ fit, spec }: FitResult): readonly FittedJoint[] {
  const own = new Set(
    spec.statements.flatMap((one) => (one.kind === 'joint' && (one.connect || !HANGS.has(one.verb)) ? [one.id] : [])),
  );
  return fit.joints.filter(({ statement }) => !own.has(statement));
}

/** Joints that take the cabinet's connectors when they name none. */
const HANGS = new Set(['butt', 'mitre']);

/** Id of the statement whose braces are open, as findings have it. */
export const statementId = ({ joint }: Situation): string | undefined => joint && statementOf(joint);

/** The shortest of the runs, as distances from zero, mm. */
export function shortestRun(
  joints: readonly FittedJoint[],
): { readonly from: Rational; readonly to: Rational } | undefined {
  let shortest: { from: Rational; to: Rational } | undefined;
  for (const { contact, zero } of joints) {
    if (!contact) continue;
    const [a, b] = zero
      ? [zero.sub(contact.lo).abs(), zero.sub(contact.hi).abs()]
      : [Rational.ZERO, contact.hi.sub(contact.lo)];
    const run = { from: Rational.min(a, b), to: Rational.max(a, b) };
    if (!shortest || run.to.sub(run.from).lt(shortest.to.sub(shortest.from))) shortest = run;
  }
  return shortest;
}
