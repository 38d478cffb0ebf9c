import { type Scene, twinOf } from '@dryfit/output';

interface TwinProps {
  readonly scene: Scene;
  /** The part drawn alone; all parts if absent. */
  readonly part: string | undefined;
  readonly chosen: string;
  readonly open: (shape: string) => void;
  /** It stands in place of the drawing; otherwise only readers of the page's text find it, and no key stops at it. */
  readonly seen: boolean;
}

/** What the drawing shows, said as a table; each row leads to its text. */
export function Twin({ scene, part, chosen, open, seen }: TwinProps) {
  const { title, headings, rows } = twinOf(scene, part);
  return (
    <section
      id="twin"
      class={seen ? 'wide twin' : 'unseen'}
      // A wide table is scrolled by keys.
      tabIndex={seen ? 0 : undefined}
      aria-label={seen ? title : `${title}, as a table`}
    >
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
                  tabIndex={seen ? undefined : -1}
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
