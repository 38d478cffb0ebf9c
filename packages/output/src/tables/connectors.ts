import { type Connector, say } from '@dryfit/engine';
import { type Batch, cabinetCell, type Item, sortedItems, type TableMaker, titleOf, warningOf } from '../batch.js';
import { byText } from '../print/order.js';
import { type Cell, count, EMPTY, type Table, text } from '../table/table.js';

/** How many of each connector are needed. */
export const table: TableMaker = { name: 'connectors', rank: 6, make };

function make(batch: Batch): Table {
  const items = sortedItems(batch);
  const rows = items.flatMap((item) => needed(item).map(({ connector, each }) => row(batch, item, connector, each)));
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
    notes: [['Counted exactly: add what is spoilt or kept in stock.']],
    cautions: [],
  };
}

function row(batch: Batch, item: Item, connector: Connector, each: number): Cell[] {
  return [cabinetCell(batch, item), ...describe(connector), count(each), count(item.count), count(each * item.count)];
}

function totals(items: readonly Item[]): Cell[][] {
  const sums = new Map<string, { connector: Connector; n: number }>();
  for (const item of items) {
    for (const { connector, each } of needed(item)) {
      const n = (sums.get(connector.name)?.n ?? 0) + each * item.count;
      sums.set(connector.name, { connector, n });
    }
  }
  return [...sums.values()]
    .sort((a, b) => byText(a.connector.name, b.connector.name))
    .map(({ connector, n }) => [text('all'), ...describe(connector), EMPTY, EMPTY, count(n)]);
}

function describe(connector: Connector): Cell[] {
  const { along, across, thickness } = connector;
  const size = connector.shape === 'dowel' ? say`${along} dia x ${across}` : say`${along} x ${across} x ${thickness}`;
  return [text(connector.name), text(connector.shape), text(size)];
}

/** Connectors of one cabinet: one for every slot of the entering half of a joint. */
export function needed({ result }: Pick<Item, 'result'>): { readonly connector: Connector; readonly each: number }[] {
  const counts = new Map<string, { connector: Connector; each: number }>();
  for (const { connector, halves } of result.fit.joints) {
    const slots = halves[0]?.slots.length ?? 0;
    if (connector === undefined || slots === 0) continue;
    counts.set(connector.name, { connector, each: (counts.get(connector.name)?.each ?? 0) + slots });
  }
  return [...counts.values()].sort((a, b) => byText(a.connector.name, b.connector.name));
}
