import { reporter } from '../findings/report.js';

/** A count that is not a whole number, or below nothing. */
export const notWhole = reporter('not-whole', 'error');
