import { reporter } from '../findings/report.js';

/** Two sides are said to touch that look the same way. */
export const againstSameWay = reporter('against-same-way', 'error');
