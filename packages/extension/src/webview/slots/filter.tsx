import type { SlotRows } from '@dryfit/language/protocol';
import { partsOf, titles, type View } from './state.js';

interface FilterProps {
  readonly table: SlotRows;
  readonly view: View;
  readonly set: (view: View) => void;
  readonly copy: (as: 'csv' | 'markdown') => void;
}

/** Which rows are listed, and taking them elsewhere. */
export function Filter({ table, view, set, copy }: FilterProps) {
  const cabinets = titles(table);
  const cabinet = cabinets.includes(view.cabinet) ? view.cabinet : '';
  const parts = partsOf(table, cabinet);
  return (
    <div class="tools">
      {cabinets.length > 1 && (
        <label>
          Cabinet{' '}
          <select value={cabinet} onChange={(event) => set({ ...view, cabinet: event.currentTarget.value })}>
            <option value="">all of them</option>
            {cabinets.map((title) => (
              <option key={title} value={title}>
                {title}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        Part{' '}
        <select
          value={parts.includes(view.part) ? view.part : ''}
          onChange={(event) => set({ ...view, part: event.currentTarget.value })}
        >
          <option value="">all of them</option>
          {parts.map((part) => (
            <option key={part} value={part}>
              {part}
            </option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => copy('csv')}>
        Copy as CSV
      </button>
      <button type="button" onClick={() => copy('markdown')}>
        Copy as Markdown
      </button>
    </div>
  );
}
