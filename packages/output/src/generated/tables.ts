// Written by `npm run generate` from the files in the folder `tables`.
import type { TableMaker } from '../batch.js';
import { table as connectors } from '../tables/connectors.js';
import { table as consumables } from '../tables/consumables.js';
import { table as cuts } from '../tables/cuts.js';
import { table as parts } from '../tables/parts.js';
import { table as slots } from '../tables/slots.js';
import { table as spacers } from '../tables/spacers.js';
import { table as stops } from '../tables/stops.js';

const found: readonly TableMaker[] = [connectors, consumables, cuts, parts, slots, spacers, stops];

/** Every table there is, in the order in which they are read. */
export const tables: readonly TableMaker[] = [...found].sort((a, b) => a.rank - b.rank);
