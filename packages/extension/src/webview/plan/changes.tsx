import type { Compared } from '../../plan/compare.js';

interface ChangesProps {
  readonly compared: Compared;
  /** When the plan stood that this one is compared with. */
  readonly since: string;
  readonly fromNow: () => void;
  readonly goTo: (setUp: number) => void;
}

/** Which set-ups an edit has touched, over the plan. */
export function Changes({ compared, since, fromNow, goTo }: ChangesProps) {
  const { setUps, gone, minutes, touched } = compared;
  const moved = setUps.filter(({ kind, was }, i) => kind === 'same' && was !== i + 1).length;
  return (
    <section class={touched > 0 ? 'changes touched' : 'changes'} aria-label="Changes">
      <p role="status">
        {touched === 0 ? 'No set-up has changed' : `${touched} ${touched === 1 ? 'set-up' : 'set-ups'} touched`} since{' '}
        {since}
        {minutes.length > 0 ? `; ${minutes.join(', ')}` : ''}.
        {touched > 0 && moved > 0 ? ` ${moved === 1 ? '1 other comes' : `${moved} others come`} at another place.` : ''}
      </p>
      {touched > 0 && (
        <>
          <ul class="notes">
            {setUps.map(
              ({ kind, words }, i) =>
                kind !== 'same' && (
                  <li key={i}>
                    <button type="button" class="link" onClick={() => goTo(i)}>
                      Set-up {i + 1}
                    </button>{' '}
                    {kind}: {words.join('; ')}
                  </li>
                ),
            )}
            {gone.map(({ was, words }) => (
              <li key={`gone ${was}`}>
                What was set-up {was} is gone: {words}
              </li>
            ))}
          </ul>
          <button type="button" onClick={fromNow}>
            Compare from now on
          </button>
        </>
      )}
    </section>
  );
}
