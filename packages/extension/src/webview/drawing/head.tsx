import type { Scene } from '@dryfit/output';
import type { Act, View } from './state.js';

interface HeadProps {
  readonly scenes: readonly Scene[];
  readonly scene: Scene;
  readonly part: string | undefined;
  readonly view: View;
  readonly act: (done: Act) => void;
}

/** Which cabinet, whole or one part of it, drawn or as a table. */
export function Head({ scenes, scene, part, view, act }: HeadProps) {
  const drawn = scene.parts.filter(({ box }) => box !== undefined);
  return (
    <header>
      <h1 class={scenes.length > 1 ? 'unseen' : ''}>{scene.title}</h1>
      {scenes.length > 1 && (
        <label>
          Cabinet{' '}
          <select value={scene.title} onChange={(event) => act({ do: 'cabinet', cabinet: event.currentTarget.value })}>
            {scenes.map(({ title }) => (
              <option key={title} value={title}>
                {title}
              </option>
            ))}
          </select>
        </label>
      )}
      <fieldset class="shows">
        <legend class="unseen">What is drawn</legend>
        <button
          type="button"
          aria-pressed={view.shows === 'cabinet'}
          onClick={() => act({ do: 'show', shows: 'cabinet' })}
        >
          Whole cabinet
        </button>
        <button
          type="button"
          aria-pressed={view.shows === 'part'}
          disabled={part === undefined}
          onClick={() => act({ do: 'show', shows: 'part' })}
        >
          One part
        </button>
      </fieldset>
      <label>
        Part{' '}
        <select
          value={part ?? ''}
          disabled={drawn.length === 0}
          onChange={(event) => act({ do: 'part', part: event.currentTarget.value })}
        >
          {drawn.map((one) => (
            <option key={one.part} value={one.part}>
              {one.part}
            </option>
          ))}
        </select>
      </label>
      <button type="button" aria-pressed={view.asTable} onClick={() => act({ do: 'table', asTable: !view.asTable })}>
        As a table
      </button>
    </header>
  );
}
