import { consumablesOf } from '@dryfit/engine';
import { type Batch, type TableMaker, titleOf, warningOf } from '../batch.js';
import { consumableLines } from '../consumables/lines.js';
import { consumableNotes } from '../consumables/notes.js';
import { type Table, text } from '../table/table.js';

/** What is used up, and what is bought for it: connectors, bands, glue. */
export const table: TableMaker = { name: 'consumables', rank: 7, make };

function make(batch: Batch): Table {
  const consumables = consumablesOf(batch.items);
  return {
    name: 'consumables',
    title: titleOf('Consumables', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'What', kind: 'text' },
      { heading: 'Name', kind: 'text' },
      { heading: 'Size', kind: 'text', optional: true },
      { heading: 'Needed', kind: 'text' },
      { heading: 'Spare', kind: 'text' },
      { heading: 'In all', kind: 'text' },
      { heading: 'Buy', kind: 'text', optional: true },
      { heading: 'Left over', kind: 'text', optional: true },
    ],
    rows: consumableLines(consumables).map(({ buy, inAll, name, needed, over, size, spare, what }) =>
      [what, name, size, needed, spare, inAll, buy, over].map(text),
    ),
    notes: consumableNotes(consumables),
    cautions: [],
  };
}
