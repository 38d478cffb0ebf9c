import { shelvesUnderLoad } from '../../load/shelf.js';
import { perContext } from './remember.js';

/** How each part bends under what it carries, or why nothing can be reckoned for it. */
export const loadedShelves = perContext(({ spec, fit }) => shelvesUnderLoad(spec, fit));
