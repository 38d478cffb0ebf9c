import { type LangiumDocument, type URI, UriUtils } from 'langium';
import { type File, type Import, isFile } from '../generated/ast.js';
import { LIBRARY_SCHEME, libraryUri } from '../library/library.js';

/** The file an import names: a path from the folder of the file it stands in, or a part of the built-in library. */
export function importedUri(from: URI, { path }: Pick<Import, 'path'>): URI | undefined {
  if (path === undefined || path.trim() === '') return undefined;
  if (path.startsWith(`${LIBRARY_SCHEME}:`)) return libraryUri(path.slice(LIBRARY_SCHEME.length + 1));
  return UriUtils.resolvePath(UriUtils.dirname(from), path.replaceAll('\\', '/'));
}

/** The files that a document imports itself, in the order written, each once. */
export function importsOf(document: LangiumDocument): readonly URI[] {
  const root = document.parseResult.value;
  if (!isFile(root)) return [];
  const uris = new Map<string, URI>();
  for (const line of root.imports) {
    const uri = importedUri(document.uri, line);
    if (uri) uris.set(uri.toString(), uri);
  }
  return [...uris.values()];
}

/** The tree of a document, if it has been read. */
export function fileOf(document: LangiumDocument | undefined): File | undefined {
  const root = document?.parseResult.value;
  return isFile(root) ? root : undefined;
}
