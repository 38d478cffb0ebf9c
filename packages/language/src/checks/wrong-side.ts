import { reporter } from '../findings/report.js';

/** Two sides, or a side and a direction, that lie across each other. */
export const wrongSide = reporter('wrong-side', 'error');
