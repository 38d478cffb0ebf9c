import { reporter } from '../findings/report.js';

/** The text breaks off from what the language can read. */
export const syntax = reporter('syntax', 'error');
