import { reporter } from '../findings/report.js';

/** A wall of a groove or notch that the part does not have. */
export const noSuchPlane = reporter('no-such-plane', 'error');
