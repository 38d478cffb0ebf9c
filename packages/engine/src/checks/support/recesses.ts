import type { FittedPart } from '../../fit/fit.js';
import { isRecess, type RecessCut } from '../../geometry/cut-solid.js';
import type { JointStatement } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';

/** A groove, rebate or housing with the part it is cut into and the statement that asks for it. */
export interface Recess {
  readonly part: FittedPart;
  readonly cut: RecessCut;
  readonly joint: JointStatement;
}

const gathered = new WeakMap<CheckContext, readonly Recess[]>();

/** Every groove, rebate and housing, part by part. */
export function recesses(context: CheckContext): readonly Recess[] {
  const known = gathered.get(context) ?? [...gather(context)];
  gathered.set(context, known);
  return known;
}

function* gather(context: CheckContext): Generator<Recess> {
  for (const part of context.fit.parts) {
    for (const cut of part.cuts) {
      if (!isRecess(cut) || cut.joint === undefined) continue;
      const joint = context.statement(cut.joint);
      if (joint?.kind === 'joint') yield { part, cut, joint };
    }
  }
}
