import { reporter } from '../findings/report.js';

/** A parameter whose value depends on itself. */
export const parameterCycle = reporter('parameter-cycle', 'error');
