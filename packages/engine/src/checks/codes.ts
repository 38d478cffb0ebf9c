import type { Severity } from '../fit/finding.js';
import { checks } from './index.js';

/** Names of the engine's checks, as a spec may allow them. */
export const checkCodes: readonly string[] = checks.map(({ code }) => code);

/** How grave each is, unless it says otherwise of a finding. */
export const checkSeverities: ReadonlyMap<string, Severity> = new Map(
  checks.map(({ code, severity }) => [code, severity]),
);
