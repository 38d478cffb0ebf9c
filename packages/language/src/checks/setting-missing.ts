import { reporter } from '../findings/report.js';

/** Something in the shop lacks a figure that it cannot do without. */
export const settingMissing = reporter('setting-missing', 'error');
