import { useState } from 'preact/hooks';
import type { FromSlots, ToSlots } from '../../panel/messages.js';
import { useKept, useMessages } from '../hooks.js';
import type { Host } from '../host.js';
import { isOld, Standing } from '../standing.js';
import { Filter } from './filter.js';
import { listed, START, sortedBy, type View } from './state.js';
import { SlotTable } from './table.js';

/** The page of a slot table. */
export function App({ host }: { readonly host: Host<FromSlots, View> }) {
  const [view, setView] = useState<View>(() => ({ ...START, ...host.kept() }));
  const [shown, setShown] = useState<Extract<ToSlots, { kind: 'rows' }> | undefined>(undefined);
  const [lit, setLit] = useState<readonly number[]>([]);
  const [told, tell] = useState('');

  const table = shown?.table;
  const rows = table ? listed(table, view) : [];
  const copy = (as: 'csv' | 'markdown') => {
    const cabinet = table?.rows.some((row) => row.cabinet === view.cabinet) ? view.cabinet : undefined;
    host.say({ kind: 'copy', as, cabinet, rows });
  };
  useMessages<FromSlots, View, ToSlots>(host, (data) => {
    switch (data.kind) {
      case 'rows': {
        setShown(data);
        const { cabinet } = data;
        const { uri } = data.standing;
        return setView((before) => ({ ...before, uri, ...(cabinet !== undefined && { cabinet, part: '' }) }));
      }
      case 'lit':
        return setLit(data.rows);
      case 'copy':
        return copy(data.as);
      case 'copied':
        return tell(
          `${data.rows} ${data.rows === 1 ? 'row' : 'rows'} copied as ${data.as === 'csv' ? 'CSV' : 'Markdown'}`,
        );
    }
  });
  useKept(host, view);

  if (!shown) return <p class="standing">Working out the slots…</p>;
  return (
    <main class={isOld(shown.standing) ? 'stale' : ''}>
      <h1 class="unseen">Slots of {shown.standing.name}</h1>
      <Standing standing={shown.standing} what="listed" />
      {table && <Filter table={table} view={view} set={setView} copy={copy} />}
      <p class="told" role="status">
        {told}
      </p>
      {table?.warning !== undefined && <p class="warning">{table.warning}</p>}
      {table && table.rows.length > 0 ? (
        <SlotTable
          table={table}
          rows={rows}
          lit={lit}
          view={view}
          sort={(heading) => setView(sortedBy(view, heading))}
          open={(row) => host.say({ kind: 'open', row })}
        />
      ) : isOld(shown.standing) ? null : (
        <p>There are no slots in {shown.standing.name}.</p>
      )}
      {table && (
        <ul class="notes">
          {table.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {table && table.cautions.length > 0 && (
        <section>
          <h2>Before you start</h2>
          <ul class="notes">
            {table.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
    </main>
  );
}
