import { readFileSync } from 'node:fs';
import { fit } from '@dryfit/engine';
import { URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { type Cabinet, type File, isJob } from '../generated/ast.js';
import { interpretCabinet } from '../interpret/cabinet.js';
import { Shops } from '../interpret/stock/shops.js';
import { unitOf } from '../interpret/units.js';
import { createJoineryServices } from '../module.js';
import { type Hover, hoverAt } from './hover.js';
import type { Knowledge } from './knowledge.js';

const folder = new URL('../../../../examples/', import.meta.url);

export const example = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

/** A text that stands beside the examples, so that it may import them. */
export async function open(text: string): Promise<(offset: number) => Hover | undefined> {
  const { shared, joinery } = createJoineryServices(NodeFileSystem);
  await shared.workspace.WorkspaceManager.initializeWorkspace([]);
  const uri = URI.parse(new URL('hovered.joinery', folder).href);
  const document = shared.workspace.LangiumDocumentFactory.fromString<File>(text, uri);
  shared.workspace.LangiumDocuments.addDocument(document);
  await shared.workspace.DocumentBuilder.build([document]);
  const shops = new Shops(joinery.joinery.Files);
  const file = document.parseResult.value;
  const knowledge: Knowledge = {
    fitted: (cabinet) => ({ result: fit(interpretCabinet(cabinet, new Map(), around(cabinet)).spec), stale: false }),
    shop: (of) => shops.of(of),
    jobLines: (cabinet) =>
      file.entries.filter(isJob).flatMap((job) => job.lines.filter((line) => line.cabinet.ref === cabinet)),
    declaration: (name) => joinery.references.References.findDeclarations(name)[0],
  };
  const around = (cabinet: Cabinet) => ({
    shop: shops.of(file),
    unit: unitOf(cabinet.$container as File),
    thickness: 'measured' as const,
  });
  return (offset) => hoverAt(file, offset, knowledge);
}

/** What is said about the place marked `<|>` in a text, or about a word in one. */
export async function hover(text: string, at = '<|>'): Promise<string> {
  const mark = at.indexOf('<|>');
  const place = text.indexOf(at.replace('<|>', ''));
  const hovered = await open(text.replace('<|>', ''));
  return hovered(place + Math.max(mark, 0))?.markdown ?? '';
}
