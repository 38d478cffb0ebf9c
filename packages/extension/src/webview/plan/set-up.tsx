import type { PlannedSetUp } from '@dryfit/language/protocol';
import type { Change } from '../../plan/compare.js';
import { Rows } from './rows.js';

interface SetUpProps {
  readonly index: number;
  readonly setUp: PlannedSetUp;
  readonly change: Change | undefined;
  readonly lit: { readonly rows: readonly string[]; readonly settings: readonly string[] };
  readonly open: (what: { readonly row?: number; readonly setting?: number }) => void;
  readonly print: () => void;
}

/** One set-up: what is set, what is changed before it, and its parts. */
export function SetUp({ index, setUp, change, lit, open, print }: SetUpProps) {
  const { settings, columns, rows, notes } = setUp;
  const kind = change?.kind ?? 'same';
  const moved = kind !== 'new' && change?.was !== undefined && change.was !== index + 1;
  return (
    <section id={`set-up-${index + 1}`} class={`set-up ${kind}`} aria-label={`Set-up ${index + 1}`} tabIndex={-1}>
      <div class="title">
        <h2>
          Set-up {index + 1}
          {kind !== 'same' && <span class="tag">{kind}</span>}
          {moved && <span class="was"> was set-up {change.was}</span>}
        </h2>
        <button type="button" onClick={print}>
          Print Set-up {index + 1}…
        </button>
      </div>
      {change && kind === 'changed' && <p class="differs">{change.words.join('; ')}</p>}
      <dl class="settings">
        {settings.map(({ name, words, anew, places }, i) => {
          const marked = lit.settings.includes(`${index}/${i}`);
          return (
            <div key={name} class={`${anew ? 'anew' : ''}${marked ? ' lit' : ''}`}>
              <dt>
                {name}
                {anew && <span class="tag">set</span>}
              </dt>
              <dd>
                {places.length === 0 ? (
                  words
                ) : (
                  <button
                    type="button"
                    class="link"
                    aria-label={`${name} ${words}`}
                    aria-current={marked ? 'true' : undefined}
                    onClick={() => open({ setting: i })}
                  >
                    {words}
                  </button>
                )}
              </dd>
            </div>
          );
        })}
      </dl>
      <p>
        Change first: {setUp.changes || 'nothing'} ({setUp.change} min). Then mill {many(setUp.pieces, 'piece')}, laid
        down {setUp.loads === 1 ? 'once' : `${setUp.loads} times`}, {many(setUp.slots, 'slot')} ({setUp.mill} min).
      </p>
      <Rows
        label={`Parts of set-up ${index + 1}`}
        columns={columns}
        rows={rows.map(({ cells }) => cells)}
        isLit={(row) => lit.rows.includes(`${index}/${row}`)}
        open={(row) => open({ row })}
      />
      <ul class="notes">
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </section>
  );
}

const many = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
