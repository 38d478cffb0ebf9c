import { reporter } from '../findings/report.js';

/** As many offsets as like parts are wanted, and another number is written. */
export const offsetCount = reporter('offset-count', 'error');
