import { AXES, axisOf, dimensionOf } from '@dryfit/engine';
import { type FlushFact, isFlushFact, type Joint } from '../generated/ast.js';
import { paragraphs } from '../hover/markdown.js';
import type { Fitted, Hint } from './hint.js';
import { partsOf } from './parts.js';

/** Where parts are flush at both ends of a direction, and so as long as what they are flush with: how long that is. */
export function flushHints(joint: Joint, fitted: Fitted): Hint[] {
  return joint.facts.filter(isFlushFact).flatMap((fact) => hintOf(fact, joint, fitted));
}

function hintOf({ sides, $cstNode: cst }: FlushFact, joint: Joint, fitted: Fitted): Hint[] {
  const parts = partsOf(joint.entering, fitted);
  const sizes = AXES.filter((axis) => sides.filter((side) => axisOf(side) === axis).length > 1).flatMap((axis) => {
    const [first, ...others] = parts.map(({ extent }) => extent[axis]);
    const alike = first !== undefined && others.every((other) => other?.equals(first));
    return alike ? [{ dimension: dimensionOf(axis), is: first }] : [];
  });
  if (!cst || sizes.length === 0) return [];
  const names = parts.map(({ id }) => id).join(', ');
  return [
    {
      offset: cst.end,
      label: sizes.map(({ dimension, is }) => `${dimension} ${fitted.lengths.of(is)}`).join(', '),
      why: () =>
        paragraphs(
          ...sizes.map(
            ({ dimension, is }) =>
              `${dimension} of ${names}: ${fitted.lengths.unit(is)}, from the one side it is flush at to the other`,
          ),
        ),
    },
  ];
}
