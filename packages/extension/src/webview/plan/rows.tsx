import type { PlanTable } from '@dryfit/language/protocol';

interface RowsProps extends Pick<PlanTable, 'columns' | 'rows'> {
  readonly label: string;
  readonly isLit?: (row: number) => boolean;
  /** Leads to the text of a row; absent where rows have none. */
  readonly open?: (row: number) => void;
}

/** A table of the plan; columns that are empty throughout are left out. */
export function Rows({ label, columns, rows, isLit, open }: RowsProps) {
  const kept = columns.flatMap((column, i) => (rows.some((cells) => cells[i]) ? [{ ...column, i }] : []));
  // The part's name leads to the text; a cabinet's would lead to another.
  const names = Math.max(
    0,
    kept.findIndex(({ heading }) => heading === 'Part'),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys
    <section class="wide" tabIndex={0} aria-label={label}>
      <table>
        <thead>
          <tr>
            {kept.map(({ heading, right }) => (
              <th key={heading} scope="col" class={right ? 'right' : ''}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, row) => {
            const marked = isLit?.(row) ?? false;
            return (
              <tr
                key={row}
                class={open ? (marked ? 'lit' : '') : undefined}
                aria-current={marked ? 'true' : undefined}
                onClick={open && (() => open(row))}
              >
                {kept.map(({ heading, right, i }, at) => (
                  <td key={heading} class={right ? 'right' : ''}>
                    {open && at === names ? (
                      <button
                        type="button"
                        class="link"
                        onClick={(event) => {
                          event.stopPropagation();
                          open(row);
                        }}
                      >
                        {cells[i]}
                      </button>
                    ) : (
                      cells[i]
                    )}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
