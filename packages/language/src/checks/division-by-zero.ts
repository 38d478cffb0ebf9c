import { reporter } from '../findings/report.js';

/** Something is divided by what comes to nothing. */
export const divisionByZero = reporter('division-by-zero', 'error');
