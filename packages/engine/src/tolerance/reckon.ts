import type { Fit, FittedJoint } from '../fit/fit.js';
import { workOut } from '../pipeline.js';
import type { Spec } from '../spec/spec.js';
import { AsMade } from './as-made.js';
import { type Distance, openingErrors, outsideErrors } from './cabinet-errors.js';
import { fromOtherFace, type JointError, jointErrors } from './joint-errors.js';
import { type Reckoning, USUAL_RECKONING } from './judge.js';
import { type MitreErrors, mitreErrors } from './mitre-errors.js';
import { type Squareness, squarenessOf } from './squareness.js';
import type { Stack } from './stack.js';
import { type Span, spanErrors } from './turned-errors.js';

/** What may be off at one joint. */
export interface ReckonedJoint {
  readonly joint: FittedJoint;
  readonly errors: readonly (JointError & {
    /** Of a step at the face the slots are measured from: what the other face would take on. */
    readonly otherFace?: Stack | undefined;
  })[];
  readonly mitre?: MitreErrors | undefined;
}

/** Everything that may be off in a cabinet. */
export interface Reckoned {
  readonly spec: Spec;
  readonly fit: Fit;
  readonly reckoning: Reckoning;
  readonly joints: readonly ReckonedJoint[];
  readonly outside: readonly Distance[];
  readonly openings: readonly Distance[];
  readonly spans: readonly Span[];
  readonly squareness?: Squareness | undefined;
  /** What the shop has said nothing of, and so counts as nothing, in the words of a shop file. */
  readonly unsaid: readonly string[];
}

/** Adds up the errors of a cabinet: for a report, not for a key. */
export function reckon(spec: Spec): Reckoned {
  const { solved, fit } = workOut(spec);
  const made = new AsMade(spec, solved, fit);
  return {
    spec,
    fit,
    reckoning: spec.shop.tolerances?.reckon ?? USUAL_RECKONING,
    joints: fit.joints.flatMap((joint) => {
      const found = jointOf(made, joint);
      return found.errors.length === 0 && !found.mitre ? [] : [found];
    }),
    outside: outsideErrors(made),
    openings: openingErrors(made),
    spans: spanErrors(made),
    squareness: squarenessOf(made),
    unsaid: unsaidOf(made),
  };
}

function jointOf(made: AsMade, joint: FittedJoint): ReckonedJoint {
  const errors = jointErrors(made, joint).map((error) =>
    error.kind === 'step' ? { ...error, otherFace: fromOtherFace(made, joint, error.side) } : error,
  );
  return { joint, errors, mitre: mitreErrors(made, joint) };
}

function unsaidOf({ fit, spec, tolerances }: AsMade): readonly string[] {
  const { jig } = spec.shop;
  const has = (test: (joint: FittedJoint) => boolean) => fit.joints.some(test);
  const slotted = has(({ halves }) => halves.length > 0);
  const asked: readonly (readonly [string, boolean])[] = [
    ['saw', tolerances.saw === undefined],
    ['square', tolerances.square === undefined],
    ['mitre', tolerances.mitre === undefined && has(({ meeting }) => meeting === 'mitre')],
    ['cuts', tolerances.cuts === undefined && has(({ verb }) => ['groove', 'house', 'rebate'].includes(verb))],
    ['fence', tolerances.fence === undefined && slotted && (jig?.fences.length ?? 0) > 0],
    [
      'spacer',
      tolerances.spacer === undefined &&
        has(({ halves }) => halves.some((half) => half.spacer.kind === 'stock' || half.spacer.kind === 'cut')),
    ],
    ['stop', tolerances.stop === undefined && slotted && jig?.stop !== undefined],
    ['line', tolerances.line === undefined && slotted],
    ['cup', tolerances.cup === undefined && slotted && jig?.hold === undefined],
    ['dirt', tolerances.dirt === undefined && slotted],
  ];
  const sheets = new Set(fit.parts.map(({ material }) => material));
  const loose = [...sheets].filter((name) => {
    const material = spec.shop.materials.get(name);
    const used = spec.thickness === 'measured' && material?.measured ? material.measured : material?.thickness;
    return used !== undefined && used.tolerance === undefined && material?.layers === undefined;
  });
  return [
    ...asked.flatMap(([word, missing]) => (missing ? [word] : [])),
    ...loose.map((name) => `thickness of ${name}`),
  ];
}
