export {
  type Clamps,
  type ComingParts,
  type GlueStep,
  type GlueUp,
  glueUp,
  mostJoints,
  type StuckParts,
  stuckParts,
  type TakenApart,
  takenApart,
} from './glue-up.js';
