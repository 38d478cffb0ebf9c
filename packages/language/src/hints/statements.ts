import { type Cabinet, isJoint, type Joint } from '../generated/ast.js';
import { idOfJoint } from '../interpret/joint.js';

/** Ids of a cabinet's joints as its fit has them; those written alike are told apart by their number. */
export function statementIds(cabinet: Cabinet): ReadonlyMap<unknown, string> {
  const counts = new Map<string, number>();
  const ids = new Map<Joint, string>();
  for (const joint of cabinet.items.filter(isJoint)) {
    const id = idOfJoint(joint);
    const count = (counts.get(id) ?? 0) + 1;
    counts.set(id, count);
    ids.set(joint, count === 1 ? id : `${id} (${count})`);
  }
  return ids;
}

/** Where a joint's head ends: before its brace, if it has one. */
export function endOfHead(joint: Joint): number {
  const cst = joint.$cstNode;
  if (cst === undefined) return 0;
  const last = joint.to.at(-1) ?? joint.between.at(-1) ?? joint.entering.at(-1);
  return last?.$cstNode?.end ?? cst.end;
}
