import { URI, UriUtils } from 'langium';
import type { Edit } from '../format/edits.js';
import type { File } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import { pathStretch, targetOf } from '../links/links.js';

/** A file or a folder that gets another address. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** What to write in a file so that its imports lead to the same files once some have moved, itself perhaps as well. */
export function importEdits(file: File, moves: readonly Move[]): Edit[] {
  const uri = file.$document?.uri;
  if (uri === undefined) return [];
  const home = movedTo(uri, moves) ?? uri;
  return file.imports.flatMap((line): Edit[] => {
    const [at, target] = [pathStretch(line), targetOf(line)];
    if (!at || !target || isLibrary(target)) return [];
    const moved = movedTo(target, moves);
    // An import that stays right stays as it is written.
    if (moved === undefined && home === uri) return [];
    const text = UriUtils.relative(UriUtils.dirname(home), moved ?? target);
    return sameFile(home, text, line.path, moved ?? target) ? [] : [{ ...at, text }];
  });
}

const sameFile = (home: URI, text: string, written: string, target: URI): boolean =>
  text === written || UriUtils.equals(UriUtils.resolvePath(UriUtils.dirname(home), written), target);

/** The address that a file gets by a move of its own or of a folder it lies in. */
function movedTo(uri: URI, moves: readonly Move[]): URI | undefined {
  const address = uri.toString();
  for (const { from, to } of moves) {
    const [old, now] = [URI.parse(from).toString(), URI.parse(to).toString()];
    if (address === old) return URI.parse(now);
    const folder = old.endsWith('/') ? old : `${old}/`;
    if (address.startsWith(folder)) return URI.parse(`${now.replace(/\/$/, '')}/${address.slice(folder.length)}`);
  }
  return undefined;
}
