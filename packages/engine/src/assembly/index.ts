export {
  type Clamps,
  type ComingParts,
  type GlueStep,
  type GlueUp,
  glueUp,
  mostJoints,
  type StuckParts,
  stuckParts,
} from './glue-up.js';
