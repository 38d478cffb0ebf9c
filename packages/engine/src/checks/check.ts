import type { Finding, Severity } from '../fit/finding.js';
import type { Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import type { Solved } from '../sizes/solved.js';
import type { PartId, Spec, Statement } from '../spec/spec.js';

/** What a check may look at: what was asked, what came out, and the solved planes behind it. */
export interface CheckContext {
  readonly spec: Spec;
  readonly fit: Fit;
  readonly solved: Solved;
  part(id: PartId): FittedPart | undefined;
  joint(id: string): FittedJoint | undefined;
  statement(id: string): Statement | undefined;
}

/** A finding before the check's name and severity are put on it. */
export type Found = Omit<Finding, 'code' | 'severity'> & {
  /** Only where a check is milder in one case than in another. */
  readonly severity?: Severity;
};

/** One thing that can be wrong with a cabinet. One file each, its page beside it. */
export interface Check {
  /** Name as users write it in `allow`, in kebab-case. */
  readonly code: string;
  readonly severity: Severity;
  run(context: CheckContext): Iterable<Found>;
}

/**
 * The checks' findings, each with its name and severity. A check that fails by a fault of its own is told as a
 * finding about the whole cabinet, and the others are heard all the same.
 */
export function runChecks(checks: readonly Check[], context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const check of checks) {
    try {
      for (const found of check.run(context)) {
        findings.push({ ...found, code: check.code, severity: found.severity ?? check.severity });
      }
    } catch (fault) {
      findings.push(failed(check, context, fault));
    }
  }
  return findings;
}

/** Name of the finding about a check that could not be run to its end. */
export const CHECK_FAILED = 'check-failed';

function failed(check: Check, { spec }: CheckContext, fault: unknown): Finding {
  const why = fault instanceof Error ? fault.message : String(fault);
  return {
    code: CHECK_FAILED,
    severity: 'error',
    message: say`the check ${check.code} could not be run to its end by a fault of its own (${why}), so what it would find is not known`,
    cure: say`Report it with this file; do not cut from these figures until it is mended.`,
    source: spec.nameSource,
    related: [],
    about: {},
  };
}
