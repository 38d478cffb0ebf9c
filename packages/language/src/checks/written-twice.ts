import { reporter } from '../findings/report.js';

/** A fact or a setting of which there can be one is written again in the same braces. */
export const writtenTwice = reporter('written-twice', 'error');
