// biome-ignore-all lint/a11y/noRedundantRoles: some browsers drop them where rows are laid out as paragraphs
import type { PlanTable } from '@dryfit/language/protocol';

interface RowsProps extends Pick<PlanTable, 'columns' | 'rows'> {
  readonly label: string;
  readonly isLit?: (row: number) => boolean;
  /** Leads to the text of a row; absent where rows have none. */
  readonly open?: (row: number) => void;
}

/**
 * A table of the plan; columns that are empty throughout are left out. Beside a text there is rarely room for its
 * columns: each cell then stands after its heading (`panels.css`), and the roles keep it a table for a screen reader.
 */
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
      <table role="table">
        <thead role="rowgroup">
          <tr role="row">
            {kept.map(({ heading, right }) => (
              <th key={heading} role="columnheader" scope="col" class={right ? 'right' : ''}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((cells, row) => {
            const marked = isLit?.(row) ?? false;
            return (
              <tr
                key={row}
                role="row"
                class={open ? (marked ? 'lit' : '') : undefined}
                aria-current={marked ? 'true' : undefined}
                onClick={open && (() => open(row))}
              >
                {kept.map(({ heading, right, i }, at) => (
                  <td
                    key={heading}
                    role="cell"
                    class={`${right ? 'right' : ''}${at === names ? ' name' : ''}`}
                    data-heading={heading}
                  >
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
