import type { FittedJoint } from '../fit/fit.js';
import { connectorsIn } from './connectors.js';

/** "glued", "glue and pins", but not "not glued", "without glue", "unglued". */
const SAYS_GLUED = /^(?!.*(\b(not|no|never|without)\b|\bunglued\b)).*glu/i;

/**
 * Whether a joint is taken to be glued. One with connectors is; one without them by its verb: a panel in a groove is loose and
 * so is a part that rests, other joints hold by glue; and by the reason that is written for having none.
 */
export function isGlued(joint: FittedJoint): boolean {
  if (connectorsIn(joint) > 0) return true;
  if (joint.without !== undefined) return SAYS_GLUED.test(joint.without);
  return joint.verb !== 'groove' && joint.verb !== 'rest';
}
