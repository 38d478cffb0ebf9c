import { checks } from './index.js';

/** Names of the engine's checks, as a spec may allow them. */
export const checkCodes: readonly string[] = checks.map(({ code }) => code);
