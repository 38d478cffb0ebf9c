import { reporter } from '../findings/report.js';

/** A length stands where a count is wanted, or the other way round, or the two are put together. */
export const unitMismatch = reporter('unit-mismatch', 'error');
