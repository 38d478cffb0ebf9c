import { elevation, exploded, type Scene, stepDrawing, svgFile } from '@dryfit/output';
import { useCallback, useEffect, useMemo, useReducer, useRef, useState } from 'preact/hooks';
import type { FromDrawing, Lit, ShownPlaces, Standing as State, ToDrawing } from '../../panel/messages.js';
import { type Size, useKept, useMessages } from '../hooks.js';
import type { Host } from '../host.js';
import { isOld, Standing } from '../standing.js';
import { Chosen } from './chosen.js';
import { Findings } from './findings.js';
import { Head } from './head.js';
import { KeyWords } from './key-words.js';
import { Picture } from './picture.js';
import { shapeIn } from './shapes.js';
import { act, cabinetOf, partOf, partWith, restored, sheetFor, stepOf, type View } from './state.js';
import { StepList, Steps } from './steps.js';
import { Tools } from './tools.js';
import { Twin } from './twin.js';

interface Drawn {
  readonly standing: State;
  readonly scenes: readonly Scene[];
}

/** The page of a drawing. */
export function App({ host }: { readonly host: Host<FromDrawing, View> }) {
  const [view, go] = useReducer(act, undefined, () => restored(host.kept()));
  const [drawn, setDrawn] = useState<Drawn | undefined>(undefined);
  const [lit, setLit] = useState<Readonly<Record<string, Lit>>>({});
  const [places, setPlaces] = useState<ShownPlaces | undefined>(undefined);
  const [told, tell] = useState('');
  const [paper, setPaper] = useState<Size | undefined>(undefined);
  const measured = useCallback(
    (size: Size) =>
      setPaper((before) => (before?.width === size.width && before.height === size.height ? before : size)),
    [],
  );

  const scenes = drawn?.scenes ?? [];
  const scene = cabinetOf(scenes, view);
  const part = scene && partOf(scene, view);
  const shown = view.shows === 'part' && part === undefined ? 'cabinet' : view.shows;
  const { stance, hiddenLines } = view;
  const step = scene && stepOf(scene, { ...view, shows: shown });
  const element = useMemo(() => {
    if (!scene) return undefined;
    if (shown === 'part' && part !== undefined) return elevation(scene, part);
    const stepped = step === undefined ? undefined : stepDrawing(scene, step, stance);
    return stepped ?? exploded(scene, stance, { visibleOnly: !hiddenLines, size: paper && sheetFor(paper) });
  }, [scene, shown, part, step, stance, hiddenLines, paper]);

  const save = () => {
    if (!scene || !element) return;
    const whole = step === undefined ? scene.title : `${scene.title} step ${step + 1}`;
    const name = shown === 'part' ? `${scene.title} ${part}` : whole;
    // A sheet of the usual size, whatever the panel's is.
    const file =
      shown === 'part' || step !== undefined ? element : exploded(scene, stance, { visibleOnly: !hiddenLines });
    host.say({ kind: 'save', cabinet: scene.title, name, svg: svgFile(file) });
  };
  useMessages<FromDrawing, View, ToDrawing>(host, (data) => {
    switch (data.kind) {
      case 'drawn':
        setDrawn(data);
        go({ do: 'file', uri: data.standing.uri });
        if (data.cabinet !== undefined) go({ do: 'cabinet', cabinet: data.cabinet });
        return;
      case 'lit':
        setLit(data.lit);
        return data.cabinet === undefined ? undefined : go({ do: 'cabinet', cabinet: data.cabinet });
      case 'places':
        return setPlaces(data);
      case 'save':
        return save();
    }
  });
  useKept(host, view);
  // Lines of the text move; what has been chosen may come from before the page was last thrown away.
  useEffect(() => {
    if (scene && view.chosen !== '') host.say({ kind: 'places', cabinet: scene.title, shape: view.chosen });
  }, [host, scene, view.chosen]);

  const opening = useRef<(shape: string) => void>(() => undefined);
  const alonePart = shown === 'part' ? part : undefined;
  // Neither a turn nor a zoom changes what the table says.
  const twin = useMemo(
    () =>
      scene && (
        <Twin
          scene={scene}
          part={alonePart}
          chosen={view.chosen}
          open={(shape) => opening.current(shape)}
          seen={view.asTable}
        />
      ),
    [scene, alonePart, view.chosen, view.asTable],
  );

  if (!drawn) return <p class="standing">Working out the cabinets…</p>;
  const standing = <Standing standing={drawn.standing} what="drawn" />;
  if (!scene || !element) {
    return (
      <main>
        {standing}
        {isOld(drawn.standing) ? null : <p>There is no cabinet in {drawn.standing.name}.</p>}
      </main>
    );
  }

  const labelOf = (shape: string) => shapeIn(scene, shape)?.label;
  const choose = (shape: string) => {
    go({ do: 'choose', shape, part: partWith(scene, shape) });
    tell(`${labelOf(shape) ?? shape}`);
  };
  const open = (shape: string, place?: number) => {
    choose(shape);
    host.say({ kind: 'open', cabinet: scene.title, shape, place });
  };
  opening.current = open;
  const alone = (one: string) => go({ do: 'part', part: one });
  const chosen = shapeIn(scene, view.chosen);
  const whole = step === undefined ? 'its parts pulled apart' : `step ${step + 1} of its glue-up`;
  const what = shown === 'part' ? `${part}, square on, with its slots` : `${scene.title}, ${whole}`;
  return (
    <main class={isOld(drawn.standing) ? 'stale' : ''}>
      <Head scenes={scenes} scene={scene} part={part} view={{ ...view, shows: shown }} act={go} />
      {standing}
      {view.asTable ? null : (
        <>
          <Picture
            element={element}
            view={{ ...view, shows: shown }}
            lit={lit[scene.title] ?? {}}
            label={what}
            labelOf={labelOf}
            act={go}
            choose={choose}
            open={open}
            measured={measured}
            alone={(shape) => {
              const of = partWith(scene, shape);
              if (of !== undefined) alone(of);
            }}
          />
          <Tools view={{ ...view, shows: shown, step }} act={go} save={save} />
          <Steps scene={scene} view={{ ...view, shows: shown }} act={go} />
          <KeyWords whole={shown === 'cabinet'} />
        </>
      )}
      {twin}
      {view.asTable && shown === 'cabinet' ? <StepList scene={scene} /> : null}
      <Chosen
        scene={scene}
        shape={chosen}
        part={chosen && partWith(scene, chosen.shape)}
        places={places}
        open={open}
        alone={alone}
      />
      <Findings scene={scene} open={(index) => host.say({ kind: 'finding', cabinet: scene.title, index })} />
      <p class="unseen" aria-live="polite">
        {told}
      </p>
    </main>
  );
}
