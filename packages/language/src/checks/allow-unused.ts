import { UNUSED_SILENCE } from '@dryfit/engine';
import { reporter } from '../findings/report.js';

/** A line that allows a check which finds nothing there; the engine says the same of its own checks. */
export const allowUnused = reporter(UNUSED_SILENCE, 'warning');
