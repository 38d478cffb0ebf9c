import type { Scene } from '@dryfit/output';

const WORD = { error: 'error', warning: 'warning', info: 'note' } as const;

interface FindingsProps {
  readonly scene: Scene;
  readonly open: (index: number) => void;
}

/** What is wrong or unwise, each leading to its text. */
export function Findings({ scene, open }: FindingsProps) {
  const { findings } = scene;
  return (
    <section class="findings" aria-label="Findings">
      <h2>
        {findings.length === 0 ? 'No findings' : findings.length === 1 ? '1 finding' : `${findings.length} findings`}
      </h2>
      <ul>
        {findings.map(({ code, severity, message, cure }, i) => (
          <li key={i}>
            <button type="button" class={`link ${severity}`} onClick={() => open(i)}>
              <b>{WORD[severity]}</b> {message}
            </button>
            <span class="cure">{cure}</span> <code>{code}</code>
          </li>
        ))}
      </ul>
    </section>
  );
}
