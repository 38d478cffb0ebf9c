import type { Check, CheckContext, Found } from '../checks/check.js';
import type { Fit } from '../fit/fit.js';
import { render, type Text } from '../fit/text.js';
import { fitJoints } from '../joints/joints.js';
import { fitParts, outsideOf } from '../parts/parts.js';
import { solveSpec } from '../sizes/solved.js';
import type { Spec } from '../spec/spec.js';

/** What a check gets to see of a spec. */
export function contextOf(spec: Spec): CheckContext {
  const solved = solveSpec(spec);
  const joints = fitJoints(solved);
  const parts = fitParts(solved, joints);
  const fit: Fit = {
    name: spec.name,
    source: spec.source,
    parameters: spec.parameters,
    thickness: spec.thickness,
    milled: spec.milled.when,
    outside: outsideOf(parts),
    parts,
    joints,
  };
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const jointOf = new Map(joints.map((joint) => [joint.id, joint]));
  const statementOf = new Map(spec.statements.map((statement) => [statement.id, statement]));
  return {
    spec,
    fit,
    solved,
    part: (id) => partOf.get(id),
    joint: (id) => jointOf.get(id),
    statement: (id) => statementOf.get(id),
  };
}

/** The findings of one check, before any silence. */
export const foundBy = (check: Check, spec: Spec): readonly Found[] => [...check.run(contextOf(spec))];

/** A message as it reads in millimetres. */
export const words = (text: Text): string => render(text, { units: 'mm' });
