import type { LengthFormat } from '@dryfit/engine';
import { type Scene, type Shape, sceneOf, sceneSteps } from '@dryfit/output';
import { type Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import { withSeverities } from '../findings/severity.js';
import type { FittedFile } from '../fits/last-good.js';
import { distinct, formatOf, type Placer, placerOf } from './places.js';
import type { DrawnCabinet, DrawnFile, TextPlace } from './protocol.js';
import type { JoineryServerServices } from './services.js';

/** What there is to draw of a file, from what has been worked out of it; stops between cabinets when it is cancelled. */
export async function drawnFile(
  document: LangiumDocument,
  { shared, editor }: JoineryServerServices,
  token: Cancellation.CancellationToken,
): Promise<DrawnFile> {
  const file = editor.LastGood.ofFile(document);
  const { joinery, severity } = editor.Settings.now;
  const place = placerOf(shared.workspace.LangiumDocuments);
  const version = shared.workspace.TextDocuments.get(document.uri)?.version;
  const cabinets: DrawnCabinet[] = [];
  for (const { result, findings } of file.cabinets) {
    await interruptAndCheck(token);
    const told = { result, findings: withSeverities(findings, severity) };
    cabinets.push(drawnCabinet(told, formatOf(document), (source) => place(file.now(source))));
  }
  return { version, broken: file.broken, stale: file.stale, workedOut: joinery, cabinets };
}

/** A cabinet's drawing, with the places of all that is drawn as an editor counts them. */
function drawnCabinet(
  { result, findings }: FittedFile['cabinets'][number],
  format: LengthFormat,
  place: Placer,
): DrawnCabinet {
  const scene = { ...sceneOf(result, findings, format), steps: sceneSteps(result) };
  return {
    scene,
    places: Object.fromEntries(shapesOf(scene).map(({ shape, places }) => [shape, distinct(places.map(place))])),
    findingPlaces: scene.findings.map((finding) => place(finding.place) ?? NOWHERE),
  };
}

/** Everything of a scene that a reader can point at. */
function shapesOf(scene: Scene): readonly Shape[] {
  const cut = scene.parts.flatMap((part) => [part, ...part.cuts, ...(part.along ?? [])]);
  return [...cut, ...scene.joints, ...(scene.marks ?? [])];
}

const NOWHERE: TextPlace = { uri: '', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
