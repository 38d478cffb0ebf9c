import { URI } from 'langium';
import { libraryTexts } from './generated/texts.js';

/** Imports that begin with this word and a colon name the built-in library. */
export const LIBRARY_SCHEME = 'dryfit';

/** Address of a part of the library, by the name it is imported with: `connectors` of "dryfit:connectors". */
export function libraryUri(name: string): URI {
  return URI.from({ scheme: LIBRARY_SCHEME, path: `/${name}.joinery` });
}

/** True for the files that come with the language. */
export const isLibrary = (uri: URI): boolean => uri.scheme === LIBRARY_SCHEME;

/** The parts of the library, as they are imported. */
export const libraryNames: readonly string[] = Object.keys(libraryTexts);

/** Text of a part of the library; undefined if there is none at that address. */
export function libraryText(uri: URI): string | undefined {
  const name = uri.path.replace(/^\//, '').replace(/\.joinery$/, '');
  return isLibrary(uri) && Object.hasOwn(libraryTexts, name) ? libraryTexts[name] : undefined;
}
