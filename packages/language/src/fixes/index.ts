import { allow } from './allow.js';
import type { Fix } from './fix.js';

/** Every fix; of one finding, cures are offered in this order. Fixes that change the joinery come before `allow`. */
export const fixes: readonly Fix[] = [allow];
