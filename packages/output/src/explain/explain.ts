import {
  AXES,
  type Dimension,
  dimensionOf,
  type FitResult,
  type FittedJoint,
  type FittedPart,
  type GlueStep,
  type Half,
  type JointError,
  type NotReckoned,
  type Rational,
  type Reason,
  type Sag,
  sagOf,
} from '@dryfit/engine';
import { glueUpSheet } from '../glue-up/sheet.js';
import { byPart, byText } from '../print/order.js';

/** A size of a part and the facts it rests on; `length` is absent while nothing fixes it. */
export interface ExplainedSize {
  readonly dimension: Dimension;
  readonly length: Rational | undefined;
  readonly reasons: readonly Reason[];
}

/** One half of a joint with the parts on both sides of it. */
export interface ExplainedHalf {
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly part: FittedPart;
  readonly mate: FittedPart | undefined;
}

/** Why a part or a joint is as it is. */
export type Explained =
  | {
      readonly kind: 'part';
      readonly part: FittedPart;
      readonly sizes: readonly ExplainedSize[];
      /** How it bends, where something is written that it carries. */
      readonly load: Sag | NotReckoned | undefined;
      readonly halves: readonly ExplainedHalf[];
      /** Steps of the glue-up that it takes part in, in words. */
      readonly steps: readonly string[];
    }
  | {
      readonly kind: 'joint';
      readonly joint: FittedJoint;
      readonly halves: readonly ExplainedHalf[];
      /** What may be off at it. */
      readonly errors: readonly JointError[];
      /** The step of the glue-up that closes it. */
      readonly steps: readonly string[];
    };

/**
 * Everything in a cabinet that goes by a name: a part ("shelf 2"), like parts ("shelf"), a joint ("shelf 2 / lh")
 * or a statement ("butt shelf between lh and rh", for its joints). Empty when nothing does.
 */
export function explain(result: FitResult, name: string): Explained[] {
  const wanted = fold(name);
  const { fit } = result;
  const parts = fit.parts.filter((part) => fold(part.id) === wanted || fold(part.kind) === wanted).sort(byPart);
  const joints = fit.joints
    .filter((joint) => fold(joint.id) === wanted || fold(joint.statement) === wanted)
    .sort((a, b) => byText(a.id, b.id));
  return [...parts.map((part) => explainPart(result, part)), ...joints.map((joint) => explainJoint(result, joint))];
}

/** Every name that `explain` knows in a cabinet, for saying what could have been asked. */
export function explainable(result: FitResult): string[] {
  const { parts, joints } = result.fit;
  const names = [...parts].sort(byPart).map((part) => part.id);
  return [...names, ...joints.map((joint) => joint.id).sort(byText)];
}

/** Names are compared without regard to white space at their ends or its amount. */
function fold(name: string): string {
  return name.trim().replace(/\s+/g, ' ');
}

function explainPart(result: FitResult, part: FittedPart): Explained {
  const sizes = AXES.map((axis) => ({
    dimension: dimensionOf(axis),
    length: part.extent[axis],
    reasons: result.reasons(part.id, axis),
  }));
  const joints = [...result.fit.joints].sort((a, b) => byText(a.id, b.id));
  const halves = joints.flatMap((joint) => halvesOf(result, joint).filter((half) => half.part.id === part.id));
  const own = new Set(
    result.fit.joints.filter(({ entering, host }) => entering === part.id || host === part.id).map(({ id }) => id),
  );
  const steps = stepsWith(
    result,
    ({ coming, joints: ids }) => coming.some(({ parts }) => parts.includes(part.id)) || ids.some((id) => own.has(id)),
  );
  return { kind: 'part', part, sizes, load: sagOf(result.spec, result.fit, part.id), halves, steps };
}

/** "step 2 of 3: Slide back into base, lh and top, moving to the left". */
function stepsWith(result: FitResult, isOne: (step: GlueStep) => boolean): readonly string[] {
  const { steps } = glueUpSheet(result);
  return steps.flatMap(({ step, words }) => (isOne(step) ? [`step ${step.number} of ${steps.length}: ${words}`] : []));
}

function explainJoint(result: FitResult, joint: FittedJoint): Explained {
  const steps = stepsWith(result, ({ joints }) => joints.includes(joint.id));
  return { kind: 'joint', joint, halves: halvesOf(result, joint), errors: result.errors(joint.id), steps };
}

function halvesOf(result: FitResult, joint: FittedJoint): ExplainedHalf[] {
  const partOf = (id: string) => result.fit.parts.find((part) => part.id === id);
  return joint.halves.flatMap((half) => {
    const part = partOf(half.part);
    if (part === undefined) return [];
    return [{ joint, half, part, mate: partOf(half.part === joint.entering ? joint.host : joint.entering) }];
  });
}
