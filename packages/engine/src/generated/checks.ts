// Written by `npm run generate` from the files in the folder `checks`.
import type { Check } from '../checks/check.js';
import { slotNearEdge } from '../checks/slot-near-edge.js';

/** Every check, in the order of their names. */
export const checks: readonly Check[] = [
  slotNearEdge,
];
