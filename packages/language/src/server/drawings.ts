import type { LengthFormat } from '@dryfit/engine';
import { type Scene, type Shape, sceneOf } from '@dryfit/output';
import type { LangiumDocument } from 'langium';
import { withSeverities } from '../findings/severity.js';
import type { FittedFile } from '../fits/last-good.js';
import { distinct, formatOf, type Placer, placerOf } from './places.js';
import type { DrawnCabinet, DrawnFile, TextPlace } from './protocol.js';
import type { JoineryServerServices } from './services.js';

/** What there is to draw of a file, from what has been worked out of it. */
export function drawnFile(document: LangiumDocument, { shared, editor }: JoineryServerServices): DrawnFile {
  const file = editor.LastGood.ofFile(document);
  const { joinery, severity } = editor.Settings.now;
  const place = placerOf(shared.workspace.LangiumDocuments);
  return {
    version: shared.workspace.TextDocuments.get(document.uri)?.version,
    broken: file.broken,
    stale: file.stale,
    workedOut: joinery,
    cabinets: file.cabinets.map(({ result, findings }) =>
      drawnCabinet({ result, findings: withSeverities(findings, severity) }, formatOf(document), (source) =>
        place(file.now(source)),
      ),
    ),
  };
}

/** A cabinet's drawing, with the places of all that is drawn as an editor counts them. */
export function drawnCabinet(
  { result, findings }: FittedFile['cabinets'][number],
  format: LengthFormat,
  place: Placer,
): DrawnCabinet {
  const scene = sceneOf(result, findings, format);
  return {
    scene,
    places: Object.fromEntries(shapesOf(scene).map(({ shape, places }) => [shape, distinct(places.map(place))])),
    findingPlaces: scene.findings.map((finding) => place(finding.place) ?? NOWHERE),
  };
}

/** Everything of a scene that a reader can point at. */
export function shapesOf(scene: Scene): readonly Shape[] {
  return [...scene.parts.flatMap((part) => [part, ...part.cuts]), ...scene.joints];
}

const NOWHERE: TextPlace = { uri: '', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
