import { type Dirent, lstatSync, readdirSync, type Stats, statSync } from 'node:fs';
import { extname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { Misuse } from '../io.js';
import { reasonOf } from './reason.js';

export const ENDING = '.joinery';

/** Files to work on, absolute and in order, and what could not be read on the way, in words. */
export interface FoundFiles {
  readonly files: readonly string[];
  readonly unreadable: readonly string[];
}

/**
 * The one .joinery file that a path names, absolute.
 * @throws Misuse if there is no such file, or it is a folder.
 */
export function findFile(path: string, cwd: string): string {
  const { files } = findFiles([path], cwd);
  const [file] = files;
  if (file === undefined || file !== resolve(cwd, path))
    throw new Misuse(`${path} is a folder; name one ${ENDING} file`);
  return file;
}

/**
 * The .joinery files that paths name: a file is itself, a folder all that lies in it at any depth. Folders that
 * start with a dot and node_modules are passed over. Links to folders are not followed, so that no loop of links
 * is walked; links to files are.
 * @throws Misuse if a path does not exist, is no .joinery file, or a folder holds none.
 */
export function findFiles(paths: readonly string[], cwd: string): FoundFiles {
  const files = new Set<string>();
  const unreadable: string[] = [];
  for (const path of paths) {
    if (path === '') throw new Misuse('a path is empty; name a file or a folder');
    const place = resolve(cwd, path);
    const kind = look(path, place);
    if (kind.isDirectory()) {
      const before = files.size + unreadable.length;
      walk(place, files, unreadable);
      if (files.size + unreadable.length === before && ![...files].some((file) => contains(place, file))) {
        throw new Misuse(`there are no ${ENDING} files in ${path}; name a folder that holds some, or a file`);
      }
    } else if (extname(place) === ENDING) files.add(place);
    else throw new Misuse(`${path} is not a ${ENDING} file`);
  }
  return { files: [...files].sort(), unreadable };
}

function look(path: string, place: string): Stats {
  try {
    return statSync(place);
  } catch (error) {
    throw new Misuse(`cannot read ${path}: ${reasonOf(error)}`);
  }
}

/** True for what lies in a folder, at any depth. */
function contains(folder: string, file: string): boolean {
  const path = relative(folder, file);
  return !isAbsolute(path) && path.split(sep)[0] !== '..';
}

function walk(folder: string, files: Set<string>, unreadable: string[]): void {
  let entries: Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    unreadable.push(`cannot read ${folder}: ${reasonOf(error)}`);
    return;
  }
  for (const entry of entries) {
    const place = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!entry.name.startsWith('.') && entry.name !== 'node_modules') walk(place, files, unreadable);
    } else if (extname(entry.name) === ENDING && !isLinkToFolder(place)) files.add(place);
  }
}

function isLinkToFolder(place: string): boolean {
  try {
    return lstatSync(place).isSymbolicLink() && statSync(place).isDirectory();
  } catch {
    // A broken link counts as a file: reading it says what is wrong.
    return false;
  }
}
