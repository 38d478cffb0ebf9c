import { readFileSync } from 'node:fs';
import { URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { type File, isJob } from '../generated/ast.js';
import { createJoineryServices } from '../module.js';
import { fileOf, importedUri } from '../scope/imports.js';
import { type Hover, hoverAt } from './hover.js';
import type { Knowledge } from './knowledge.js';

const folder = new URL('../../../../examples/', import.meta.url);

export const example = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

/** Reads a text that stands beside the examples, so that it may import them, and gives what is said at its offsets. */
export async function open(text: string): Promise<(offset: number) => Hover | undefined> {
  const { shared, joinery } = createJoineryServices(NodeFileSystem);
  await shared.workspace.WorkspaceManager.initializeWorkspace([]);
  const uri = URI.parse(new URL('hovered.joinery', folder).href);
  const document = shared.workspace.LangiumDocumentFactory.fromString<File>(text, uri);
  shared.workspace.LangiumDocuments.addDocument(document);
  await shared.workspace.DocumentBuilder.build([document]);
  const file = document.parseResult.value;
  const knowledge: Knowledge = {
    fitted: (cabinet) => ({ result: joinery.joinery.Fits.of(cabinet).result, stale: false }),
    made: (line) => {
      const made = joinery.joinery.Fits.line(line);
      return made && { result: made.variant.result, stale: false };
    },
    imported: (line) => {
      const path = importedUri(uri, line);
      return path && fileOf(shared.workspace.LangiumDocuments.getDocument(path));
    },
    shop: (of) => joinery.joinery.Shops.of(of),
    jobLines: (cabinet) =>
      file.entries.filter(isJob).flatMap((job) => job.lines.filter((line) => line.cabinet.ref === cabinet)),
    declaration: (name) => joinery.references.References.findDeclarations(name)[0],
  };
  return (offset) => hoverAt(file, offset, knowledge);
}

/** What is said about the first place of `words` in a text, `|` in them marking the letter pointed at. */
export async function hoverIn(text: string, ...words: readonly string[]): Promise<string[]> {
  const at = await open(text);
  return words.map((word) => {
    const place = text.indexOf(word.replace('|', ''));
    if (place < 0) throw new Error(`the text has no ${word}`);
    return at(place + Math.max(0, word.indexOf('|')))?.markdown ?? '';
  });
}
