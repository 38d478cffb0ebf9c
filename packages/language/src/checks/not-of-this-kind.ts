import { reporter } from '../findings/report.js';

/** A fact or a setting that this kind of joint, machine or connector does not have, and that would be passed over. */
export const notOfThisKind = reporter('not-of-this-kind', 'error');
