export {
  baseFromStep,
  baseFromWalls,
  MEASURED_WITHIN,
  type MeasuredLength,
  stepOf,
  type TurnedJoint,
  type Walls,
} from './base.js';
export { type DepthFound, depthFromDepth, depthFromGap } from './depth.js';
export { type BaseMoves, baseMoves, type MovedHalf, withBase } from './moves.js';
export { agree, stopFromJoint, stopFromWalls } from './stop.js';
export { type Askew, type StopMoves, type StoppedHalf, stopMoves } from './stop-moves.js';
