export { ifCutAsPlanned, type Moved } from './as-planned.js';
export type { Distance } from './cabinet-errors.js';
export type { Contributor, Origin } from './contributor.js';
export { type Curve, type CurveRange, cornersOf, type Straightened, slopesOf, straightened } from './curve.js';
export type { JointError } from './joint-errors.js';
export { furthest, furthestIn, furthestOf, type Reckoning, USUAL_RECKONING } from './judge.js';
export {
  type Batch,
  type Changed,
  type CutAnew,
  fromBatch,
  ifMeasured,
  type Otherwise,
  type Recut,
  type Reset,
} from './measured.js';
export type { MitreErrors } from './mitre-errors.js';
export { type Reckoned, type ReckonedJoint, reckon } from './reckon.js';
export { type About, type Figures, figuresOf, type Result, resultsOf, tryResults } from './results.js';
export { diagonalDifference, type Squareness } from './squareness.js';
export {
  type Contribution,
  contributions,
  type Range,
  type RootSumSquare,
  rootSumSquare,
  type Stack,
  worstCase,
} from './stack.js';
export { toldOff } from './told.js';
export { type Trials, tryOut } from './trials.js';
export { contributorsIn, isNothing, rankedIn, shiftIn, type Tried } from './tried.js';
export type { Span } from './turned-errors.js';
