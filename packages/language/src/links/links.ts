import { GrammarUtils, type URI } from 'langium';
import { type File, type Import, isImport } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import { importedUri } from '../scope/imports.js';
import type { Stretch } from '../tree/leaves.js';

/** A path in a text and the file it leads to. */
export interface Link extends Stretch {
  readonly target: URI;
  readonly tip: string;
}

/** Where the imports of a file lead, the quotes around them left out. */
export function linksOf(file: File): Link[] {
  return file.imports.flatMap((line) => {
    const [at, target] = [pathStretch(line), targetOf(line)];
    if (!at || !target) return [];
    return [{ ...at, target, tip: isLibrary(target) ? 'Built-in library' : 'Imported file' }];
  });
}

/** The file that an import names at a place. */
export function linkAt(file: File, offset: number): Link | undefined {
  return linksOf(file).find(({ start, end }) => start - 1 <= offset && offset <= end + 1);
}

/** The path an import is written with, without its quotes. */
export function pathStretch(line: Import): Stretch | undefined {
  const cst = GrammarUtils.findNodeForProperty(line.$cstNode, 'path');
  return cst && cst.length > 2 ? { start: cst.offset + 1, end: cst.end - 1 } : undefined;
}

/** The address an import names, as it is seen from its own file. */
export function targetOf(line: Import): URI | undefined {
  const from = isImport(line) ? line.$container.$document?.uri : undefined;
  return from && importedUri(from, line);
}
