import type { Act, View } from './state.js';

interface ToolsProps {
  readonly view: View;
  readonly act: (done: Act) => void;
  readonly save: () => void;
}

/** What can be done with a drawing, in words. */
export function Tools({ view, act, save }: ToolsProps) {
  const does = (done: Act) => () => act(done);
  return (
    <div class="tools" role="toolbar" aria-label="Drawing">
      {view.shows === 'cabinet' && (
        <>
          <fieldset class="set" aria-label="Turn">
            <button type="button" onClick={does({ do: 'turn', turn: -15, tilt: 0 })}>
              Turn left
            </button>
            <button type="button" onClick={does({ do: 'turn', turn: 15, tilt: 0 })}>
              Turn right
            </button>
            <button type="button" onClick={does({ do: 'turn', turn: 0, tilt: 10 })}>
              From higher
            </button>
            <button type="button" onClick={does({ do: 'turn', turn: 0, tilt: -10 })}>
              From lower
            </button>
            <button type="button" onClick={does({ do: 'turn', turn: 180, tilt: 0 })}>
              From behind
            </button>
          </fieldset>
          {view.step === undefined && (
            <>
              <label class="set">
                Apart
                <input
                  type="range"
                  min="0"
                  max="100"
                  step="5"
                  value={Math.round(view.stance.apart * 100)}
                  onInput={(event) => act({ do: 'pull', apart: Number(event.currentTarget.value) / 100 })}
                />
              </label>
              <button
                type="button"
                aria-pressed={view.hiddenLines}
                onClick={does({ do: 'hidden lines', shown: !view.hiddenLines })}
              >
                Hidden lines
              </button>
            </>
          )}
        </>
      )}
      <fieldset class="set" aria-label="Nearer or farther">
        <button type="button" onClick={does({ do: 'zoom', by: 1.25 })}>
          Nearer
        </button>
        <button type="button" onClick={does({ do: 'zoom', by: 0.8 })}>
          Farther
        </button>
        <button type="button" onClick={does({ do: 'whole' })}>
          All of it
        </button>
        <span class="zoom">{Math.round(view.frames[view.shows].zoom * 100)} %</span>
      </fieldset>
      <button type="button" onClick={save}>
        Save as SVG…
      </button>
    </div>
  );
}
