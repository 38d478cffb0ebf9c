import { type Axis, axisOf, type Side, thicknessAxis } from '../spec/sides.js';
import type { Fact, JointStatement, PartSpec } from '../spec/spec.js';

/** Sides along an axis that placing facts fix, each once. Centring and even openings fix no single side. */
export function fixedAlong(facts: readonly Fact[], axis: Axis): readonly Side[] {
  const sides = new Set<Side>();
  for (const fact of facts) {
    if (fact.kind === 'centred' || fact.kind === 'openings') continue;
    for (const side of fact.kind === 'flush' ? fact.sides : [fact.side]) if (axisOf(side) === axis) sides.add(side);
  }
  return [...sides];
}

/** The large faces of `part` that the joint's own facts fix: none, one or both. */
export const fixedFaces = (joint: JointStatement, part: PartSpec): readonly Side[] =>
  fixedAlong(joint.facts, thicknessAxis(part.attitude));
