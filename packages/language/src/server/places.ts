import type { LengthFormat, Source } from '@dryfit/engine';
import { type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import { unitOf } from '../interpret/units.js';
import { fileOf } from '../scope/imports.js';
import type { TextPlace } from './protocol.js';

/** Turns sources into places as editors count; undefined for a text that is no more. */
export type Placer = (source: Source) => TextPlace | undefined;

export function placerOf(documents: LangiumDocuments): Placer {
  return ({ uri, start, end }) => {
    const text = documents.getDocument(URI.parse(uri))?.textDocument;
    return text && { uri, range: { start: text.positionAt(start), end: text.positionAt(end) } };
  };
}

/** How lengths are printed for a file: in its own units, as the command line prints them. */
export function formatOf(document: LangiumDocument): LengthFormat {
  const file = fileOf(document);
  return { units: file ? unitOf(file) : 'mm' };
}

/** Places in their order, each once; those of texts that are no more are left out. */
export function distinct(places: readonly (TextPlace | undefined)[]): readonly TextPlace[] {
  const seen = new Map<string, TextPlace>();
  for (const place of places) {
    const key = JSON.stringify(place);
    if (place && !seen.has(key)) seen.set(key, place);
  }
  return [...seen.values()];
}
