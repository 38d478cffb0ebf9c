import { type Connector, countConnectors } from '@dryfit/engine';
import { type Batch, cabinetCell, type Item, sortedItems, type TableMaker, titleOf, warningOf } from '../batch.js';
import { connectorSize } from '../consumables/lines.js';
import { byText } from '../print/order.js';
import { type Cell, count, EMPTY, type Table, text } from '../table/table.js';

/** How many of each connector are needed. */
export const table: TableMaker = { name: 'connectors', rank: 6, make };

function make(batch: Batch): Table {
  const items = sortedItems(batch);
  const rows = items.flatMap((item) =>
    counted(item).map(({ connector, count: each }) => row(batch, item, connector, each)),
  );
  return {
    name: 'connectors',
    title: titleOf('Connectors', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'Cabinet', kind: 'text', optional: true },
      { heading: 'Connector', kind: 'text' },
      { heading: 'Shape', kind: 'text' },
      { heading: 'Size', kind: 'text' },
      { heading: 'In one', kind: 'count', optional: true },
      { heading: 'Cabinets', kind: 'count', optional: true },
      { heading: 'Needed', kind: 'count' },
    ],
    rows: items.length > 1 ? [...rows, ...totals(items)] : rows,
    notes: [['Counted exactly. What is bought, with what is spoilt, is in the table of consumables.']],
    cautions: [],
  };
}

const counted = ({ result }: Item) => countConnectors(result.fit);

function row(batch: Batch, item: Item, connector: Connector, each: number): Cell[] {
  return [cabinetCell(batch, item), ...describe(connector), count(each), count(item.count), count(each * item.count)];
}

function totals(items: readonly Item[]): Cell[][] {
  const sums = new Map<string, { connector: Connector; n: number }>();
  for (const item of items) {
    for (const { connector, count: each } of counted(item)) {
      const n = (sums.get(connector.name)?.n ?? 0) + each * item.count;
      sums.set(connector.name, { connector, n });
    }
  }
  return [...sums.values()]
    .sort((a, b) => byText(a.connector.name, b.connector.name))
    .map(({ connector, n }) => [text('all'), ...describe(connector), EMPTY, EMPTY, count(n)]);
}

function describe(connector: Connector): Cell[] {
  return [text(connector.name), text(connector.shape), text(connectorSize(connector))];
}
