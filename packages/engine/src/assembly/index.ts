export {
  type Clamps,
  type ComingParts,
  type GlueStep,
  type GlueUp,
  glueUp,
  mostJoints,
  type StuckParts,
} from './glue-up.js';
