import { reporter } from '../findings/report.js';

/** A figure that the thing it describes cannot have. */
export const settingWrong = reporter('setting-wrong', 'error');
