import type { SlotRows } from '@dryfit/language/protocol';
import type { View } from './state.js';

interface SlotTableProps {
  readonly table: SlotRows;
  readonly rows: readonly number[];
  readonly lit: readonly number[];
  readonly view: View;
  readonly sort: (heading: string) => void;
  readonly open: (row: number) => void;
}

/** The table itself; a row leads to its text, the rows that the cursor is in are marked. */
export function SlotTable({ table, rows, lit, view, sort, open }: SlotTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys
    <section class="wide" tabIndex={0} aria-label="Slots">
      <table>
        <thead>
          <tr>
            {table.columns.map(({ heading, right }) => {
              const by = view.by === heading;
              return (
                <th
                  key={heading}
                  scope="col"
                  class={right ? 'right' : ''}
                  aria-sort={by ? (view.falling ? 'descending' : 'ascending') : 'none'}
                >
                  <button type="button" onClick={() => sort(heading)}>
                    {heading}
                    <span aria-hidden="true">{by ? (view.falling ? ' ↓' : ' ↑') : ''}</span>
                  </button>
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const marked = lit.includes(row);
            return (
              <tr
                key={row}
                class={marked ? 'lit' : ''}
                aria-current={marked ? 'true' : undefined}
                onClick={() => open(row)}
              >
                {table.rows[row]?.cells.map(({ text }, i) => {
                  const column = table.columns[i];
                  return (
                    <td key={column?.heading} class={column?.right ? 'right' : ''}>
                      {i === 0 ? (
                        <button
                          type="button"
                          class="link"
                          onClick={(event) => {
                            event.stopPropagation();
                            open(row);
                          }}
                        >
                          {text}
                        </button>
                      ) : (
                        text
                      )}
                    </td>
                  );
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
