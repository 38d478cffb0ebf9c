import type { LangiumDocument, LangiumDocuments } from 'langium';
import { isLibrary } from '../library/library.js';
import { importsOf } from '../scope/imports.js';

/** The documents that neither are wanted themselves nor are imported, however far, by one that is. */
export function unneeded(
  documents: LangiumDocuments,
  isWanted: (document: LangiumDocument) => boolean,
): readonly LangiumDocument[] {
  const needed = new Set(documents.all.filter((document) => isLibrary(document.uri) || isWanted(document)));
  for (const document of needed) {
    for (const uri of importsOf(document)) {
      const imported = documents.getDocument(uri);
      if (imported) needed.add(imported);
    }
  }
  return documents.all.filter((document) => !needed.has(document)).toArray();
}
