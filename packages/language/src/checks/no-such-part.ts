import { reporter } from '../findings/report.js';

/** A number that no part of the name has, or a number for a part that stands alone. */
export const noSuchPart = reporter('no-such-part', 'error');
