export { type Alike, inRow, type Share } from './alike.js';
export type { Beside } from './beside.js';
export { USUAL_CHANGES } from './changes.js';
export { type FirstMeasure, type FirstPiece, firstPieces, type Measured, wallAt } from './first-piece.js';
export type { Bound, Bounds, Unsaid } from './first-piece-bounds.js';
export { type HistoryStep, historiesOf, inTurn, type PieceHistory, waitsWithin } from './history.js';
export { type Holding, holdingOf, ONE_PERSON_LIFTS, type Packer } from './holding.js';
export type { Needs, OtherWork } from './needs.js';
export { type HalfOfJob, halvesOf, type Operation, type Pieces, type WorkItem } from './operation.js';
export {
  type MarkedTogether,
  markedTogether,
  type Orientation,
  orientationOf,
  type Reference,
} from './orientation.js';
export { type OwnPattern, type PatternChoice, type PatternedJoint, patternsFor } from './patterns.js';
export { type Plan, type Planning, planWork, type SetUp, type Wait } from './plan.js';
export { type BenchPose, type PieceTurn, poseOf, turnsBetween } from './pose.js';
export { type FenceSpacers, mostOfEach, type SpacerCount } from './rack.js';
export { type Like, likeIt, remade } from './remake.js';
export { type ChangeOver, type Setting, sameStack } from './setting.js';
export { type Hand, type NearMarks, nearMarks, READ_APART, type Strip, type StripLine, stripOf } from './strip.js';
export type { MilledOtherwise } from './ways.js';
