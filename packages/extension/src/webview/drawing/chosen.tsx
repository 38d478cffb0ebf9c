import type { Scene, Shape } from '@dryfit/output';
import type { ShownPlaces } from '../../panel/messages.js';

interface ChosenProps {
  readonly scene: Scene;
  readonly shape: Shape | undefined;
  readonly part: string | undefined;
  readonly places: ShownPlaces | undefined;
  readonly open: (shape: string, place?: number) => void;
  readonly alone: (part: string) => void;
}

/** What has been chosen, and every place of the text that makes it what it is. */
export function Chosen({ scene, shape, part, places, open, alone }: ChosenProps) {
  if (shape === undefined) return <p class="chosen-line">Click a part or a slot to go to its text.</p>;
  const listed = places?.shape === shape.shape && places.cabinet === scene.title ? places : undefined;
  return (
    <div class="chosen-line">
      <p>
        <strong>{shape.label}</strong>
        {part !== undefined && (
          <button type="button" onClick={() => alone(part)}>
            Draw {part} alone
          </button>
        )}
      </p>
      <ol class="places" aria-label={`Places of ${shape.label} in the text`}>
        {(listed?.labels ?? []).map((label, i) => (
          <li key={i}>
            <button
              type="button"
              class="link"
              aria-current={i === listed?.at ? 'true' : undefined}
              onClick={() => open(shape.shape, i)}
            >
              {label}
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}
