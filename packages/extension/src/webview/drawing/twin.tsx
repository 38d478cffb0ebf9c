import { type Scene, twinOf } from '@dryfit/output';

interface TwinProps {
  readonly scene: Scene;
  /** The part drawn alone; all parts if absent. */
  readonly part: string | undefined;
  readonly chosen: string;
  readonly open: (shape: string) => void;
}

/** What the drawing shows, said as a table; each row leads to its text. */
export function Twin({ scene, part, chosen, open }: TwinProps) {
  const { title, headings, rows } = twinOf(scene, part);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys
    <section class="wide twin" tabIndex={0} aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            {headings.map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ shape, cells: [name, what, ...figures] }) => (
            <tr key={shape} class={shape.startsWith('part ') ? 'whole' : ''}>
              <th scope="row">{name}</th>
              <td>
                <button
                  type="button"
                  class="link"
                  aria-current={shape === chosen ? 'true' : undefined}
                  onClick={() => open(shape)}
                >
                  {what}
                </button>
              </td>
              {figures.map((cell, i) => (
                <td key={headings[i + 2]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
