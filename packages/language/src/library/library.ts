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

/** The part of the library that has an entry of this type and name: "connectors" for Connector biscuit20. */
export function libraryHolding(type: string, name: string): string | undefined {
  return libraryNames.find((part) => entriesOf(part).has(`${type.toLowerCase()} ${name}`));
}

/** The entries of a part of the library, as in "connector biscuit20". */
function entriesOf(part: string): ReadonlySet<string> {
  const heads = (libraryTexts[part] ?? '').matchAll(/^([a-z]+)\s+([\p{L}\d_]+)/gmu);
  return new Set([...heads].map(([, type, name]) => `${type} ${name}`));
}
