import type { Scene } from '@dryfit/output';

interface TwinProps {
  readonly scene: Scene;
  /** The part drawn alone; all parts if absent. */
  readonly part: string | undefined;
  readonly chosen: string;
  readonly open: (shape: string) => void;
}

/** What the drawing shows, said as tables; each row leads to its text. */
export function Twin({ scene, part, chosen, open }: TwinProps) {
  const parts = scene.parts.filter((one) => part === undefined || one.part === part);
  const slots = parts.flatMap((one) =>
    one.cuts.flatMap((cut) => (cut.measured ? [{ part: one, cut, measured: cut.measured }] : [])),
  );
  const cuts = parts.flatMap((one) => one.cuts.filter((cut) => !cut.measured).map((cut) => ({ part: one, cut })));
  const name = (shape: string, words: string) => (
    <button type="button" class="link" aria-current={shape === chosen ? 'true' : undefined} onClick={() => open(shape)}>
      {words}
    </button>
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: wide tables are scrolled by keys
    <section class="wide twin" tabIndex={0} aria-label={`${part ?? scene.title} as a table`}>
      <table>
        <caption>Parts ({scene.units})</caption>
        <thead>
          <tr>
            {['Part', 'Width', 'Depth', 'Height', 'Sheet', 'Grain', 'Bands'].map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {parts.map((one) => (
            <tr key={one.shape}>
              <th scope="row">{name(one.shape, one.part)}</th>
              {one.sizes.map((size, axis) => (
                <td key={axis} class="right">
                  {size ?? 'not fixed'}
                </td>
              ))}
              <td>{one.material}</td>
              <td>{GRAIN[one.grain]}</td>
              <td>{one.bands.map(({ side, band }) => `${side}: ${band}`).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {slots.length > 0 && (
        <table>
          <caption>Slots ({scene.units})</caption>
          <thead>
            <tr>
              {['Part', 'Into', 'Slot', 'From datum', 'Datum', 'From reference', 'Reference', 'Depth'].map(
                (heading) => (
                  <th key={heading} scope="col">
                    {heading}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {slots.map(({ part: one, cut, measured }) => (
              <tr key={cut.shape}>
                <th scope="row">{one.part}</th>
                <td>{cut.surface}</td>
                <td>{name(cut.shape, cut.label)}</td>
                <td class="right">{measured.fromDatum}</td>
                <td>{measured.datum}</td>
                <td class="right">{measured.across}</td>
                <td>{`${measured.from.side} ${measured.from.kind}`}</td>
                <td class="right">{measured.depth}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {cuts.length > 0 && (
        <table>
          <caption>Other cuts</caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Into</th>
              <th scope="col">Cut</th>
            </tr>
          </thead>
          <tbody>
            {cuts.map(({ part: one, cut }) => (
              <tr key={cut.shape}>
                <th scope="row">{one.part}</th>
                <td>{cut.surface}</td>
                <td>{name(cut.shape, cut.label)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const GRAIN = { x: 'along its width', y: 'along its depth', z: 'along its height' } as const;
