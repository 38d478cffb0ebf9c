import type { URI } from 'langium';
import { pathBetween } from '../../completion/imports.js';
import { isLibrary } from '../../library/library.js';

/** How one file names another in an import; undefined if it cannot. */
export function pathTo(from: URI, to: URI): string | undefined {
  if (isLibrary(to) || from.scheme !== to.scheme || from.authority !== to.authority) return undefined;
  return pathBetween(from.path, to.path);
}
