import { takenApart } from '../../assembly/index.js';
import { perContext } from './remember.js';

/** How the cabinet comes apart, once for all checks that ask. */
export const comingApart = perContext(({ fit }) => takenApart(fit));
