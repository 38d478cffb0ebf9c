import type { Check } from './check.js';

export const checks: readonly Check[] = [];
