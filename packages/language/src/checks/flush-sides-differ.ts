import { reporter } from '../findings/report.js';

/** Flush brings two sides of the same name into one plane, and two different ones are named. */
export const flushSidesDiffer = reporter('flush-sides-differ', 'error');
