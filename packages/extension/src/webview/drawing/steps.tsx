import type { Scene } from '@dryfit/output';
import { type Act, stepOf, type View } from './state.js';

interface StepsProps {
  readonly scene: Scene;
  readonly view: View;
  readonly act: (done: Act) => void;
}

/** Goes through the glue-up, step by step. A button that leads nowhere stays where it is, so that the keys are not lost. */
export function Steps({ scene, view, act }: StepsProps) {
  const steps = scene.steps ?? [];
  if (view.shows !== 'cabinet' || steps.length === 0) return null;
  const at = stepOf(scene, view);
  if (at === undefined) {
    return (
      <div class="tools" role="toolbar" aria-label="Glue-up">
        <button type="button" onClick={() => act({ do: 'step', step: 0 })}>
          Glue-up, step by step
        </button>
      </div>
    );
  }
  const to = (step: number) => () => {
    if (step >= 0 && step < steps.length) act({ do: 'step', step });
  };
  const step = steps[at];
  return (
    <div class="tools" role="toolbar" aria-label="Glue-up">
      <button type="button" aria-disabled={at === 0} onClick={to(at - 1)}>
        Previous step
      </button>
      <button type="button" aria-disabled={at === steps.length - 1} onClick={to(at + 1)}>
        Next step
      </button>
      <button type="button" onClick={() => act({ do: 'step', step: undefined })}>
        All parts apart
      </button>
      <p class="told" aria-live="polite">
        Step {at + 1} of {steps.length}: {step?.label}. {step?.notes.map((note) => `${note}.`).join(' ')}
      </p>
    </div>
  );
}

/** The same to be read, where the drawing is read as a table. */
export function StepList({ scene: { steps = [] } }: Pick<StepsProps, 'scene'>) {
  if (steps.length === 0) return null;
  return (
    <section>
      <h2>Glue-up</h2>
      <ol>
        {steps.map(({ label, notes }) => (
          <li key={label}>{[label, ...notes].map((line) => `${line}.`).join(' ')}</li>
        ))}
      </ol>
    </section>
  );
}
