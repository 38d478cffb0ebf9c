import { reporter } from '../findings/report.js';

/** Several like parts are named where one of them is meant. */
export const onePartWanted = reporter('one-part-wanted', 'error');
