import { reporter } from '../findings/report.js';

/** `23-1/4` means 23 1/4 to a joiner and 22 3/4 to a calculator. */
export const hyphenedFraction = reporter('hyphened-fraction', 'error');
