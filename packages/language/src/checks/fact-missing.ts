import { reporter } from '../findings/report.js';

/** A joint lacks the figure that makes it. */
export const factMissing = reporter('fact-missing', 'error');
