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
  // Where one cabinet is listed, a column that says which one says nothing.
  const one = new Set(rows.map((row) => table.rows[row]?.cabinet)).size <= 1;
  const columns = table.columns.flatMap((column, i) => (one && column.heading === 'Cabinet' ? [] : [{ ...column, i }]));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys
    <section class={one ? 'wide slots single' : 'wide slots'} tabIndex={0} aria-label="Slots">
      <table>
        <thead>
          <tr>
            {columns.map(({ heading, right }) => {
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
                {columns.map(({ heading, right, i }, at) => {
                  const text = table.rows[row]?.cells[i]?.text ?? '';
                  return (
                    <td key={heading} class={right ? 'right' : ''}>
                      {at === 0 ? (
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
