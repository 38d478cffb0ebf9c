import { reporter } from '../findings/report.js';

/** A name that nothing in sight has. */
export const unknownName = reporter('unknown-name', 'error');
