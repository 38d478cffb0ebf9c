import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { reasonOf } from '../input/reason.js';
import { Misuse } from '../io.js';
import { MANIFEST, type Manifest, manifestText, readManifest } from './manifest.js';

/** A file to write: its path below the folder, with forward slashes, and its text, or bytes where it is none. */
export interface Written {
  readonly path: string;
  readonly text: string | Uint8Array;
}

export interface Outcome {
  readonly written: number;
  /** Files of an earlier build of the same source that this one no longer makes. */
  readonly removed: number;
}

/**
 * Writes files into a folder, all of them or none: they are first written under another name inside the folder,
 * then moved into place, and moved back if any move fails. What an earlier build of the same source left behind
 * and this one does not make is taken away, so that nobody mills from a table that no longer holds. Nothing
 * outside the folder is touched: a link below it is refused. Of what earlier builds made, only what is `ours` is
 * replaced; the rest, made by another command from the same source, stays. Synchronous throughout, so that an interrupt is
 * handled before or after and never in between.
 * @throws Misuse, with everything as it was, if that cannot be done.
 */
export function writeWhole(
  out: string,
  source: string,
  files: readonly Written[],
  ours: (path: string) => boolean = () => true,
): Outcome {
  const made = makeFolder(out);
  const folder = realpathSync(out);
  let staging: string | undefined;
  try {
    const from = relative(folder, source).replaceAll('\\', '/');
    const manifest = readManifest(folder);
    refuseOthers(manifest, from, files);
    const earlier = (manifest[from] ?? []).filter((path) => !files.some((file) => file.path === path));
    const stale = earlier.filter(ours);
    const others = earlier.filter((path) => !ours(path));
    const gone = stale.filter((path) => look(join(folder, path))?.isFile());
    const record = {
      path: MANIFEST,
      text: manifestText({ ...manifest, [from]: [...others, ...files.map((file) => file.path)].sort() }),
    };
    for (const { path } of [...files, record, ...gone.map((path) => ({ path }))]) refuseLinks(folder, path);
    staging = mkdtempSync(join(folder, '.dryfit-'));
    const moves = stage(folder, staging, [...files, record]);
    move(folder, staging, moves, gone);
    return { written: files.length, removed: gone.length };
  } catch (error) {
    if (error instanceof Misuse) throw error;
    throw new Misuse(`nothing was written to ${out}: ${reasonOf(error)}`);
  } finally {
    if (staging !== undefined) rmSync(staging, { recursive: true, force: true });
    // A folder that was made for this and stayed empty goes again; one that holds something stays.
    made.forEach(removeEmpty);
  }
}

/** Makes a folder and those above it; returns those made, the innermost first. */
function makeFolder(path: string): string[] {
  const made: string[] = [];
  try {
    const missing: string[] = [];
    for (let folder = path; look(folder) === undefined; folder = dirname(folder)) missing.push(folder);
    // One by one: Node's own recursion never ends where a file system takes no folders, as /proc does.
    for (const folder of missing.reverse()) {
      mkdirSync(folder);
      made.unshift(folder);
    }
    if (!statSync(path).isDirectory()) throw Object.assign(new Error(), { code: 'EEXIST' });
  } catch (error) {
    made.forEach(removeEmpty);
    throw new Misuse(`cannot make the folder ${path}: ${reasonOf(error)}`);
  }
  return made;
}

/** Removes a folder if it is there and empty. */
function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // It holds something, or it is not there: either way it is to stay as it is.
  }
}

/** Two sources that make a file of the same name would silently replace each other's tables. */
function refuseOthers(manifest: Manifest, source: string, files: readonly Written[]): void {
  const wanted = new Set(files.map((file) => file.path.toLowerCase()));
  for (const [other, paths] of Object.entries(manifest)) {
    const clash = other === source ? undefined : paths.find((path) => wanted.has(path.toLowerCase()));
    if (clash !== undefined) {
      throw new Misuse(`${clash} was built from ${other} (seen from --out); build this file into another folder`);
    }
  }
}

/** Refuses a place that leads out of the folder by a link, or where something else than a file stands. */
function refuseLinks(folder: string, path: string): void {
  const steps = path.split('/');
  if (steps.some((step) => step === '' || step === '.' || step === '..'))
    throw new Misuse(`${path} leads out of --out`);
  steps.forEach((_, i) => {
    const place = steps.slice(0, i + 1).join('/');
    const there = look(join(folder, place));
    if (there === undefined) return;
    if (there.isSymbolicLink())
      throw new Misuse(`nothing was written: ${place} in --out is a link, which may lead elsewhere`);
    const last = i === steps.length - 1;
    if (last && !there.isFile()) throw new Misuse(`nothing was written: ${place} in --out is not a file`);
    if (!last && !there.isDirectory()) throw new Misuse(`nothing was written: ${place} in --out is not a folder`);
  });
}

function look(path: string): Stats | undefined {
  return lstatSync(path, { throwIfNoEntry: false });
}

interface Move {
  readonly from: string;
  readonly to: string;
}

function stage(folder: string, staging: string, files: readonly Written[]): Move[] {
  return files.map((file, i) => {
    const from = join(staging, String(i));
    writeFileSync(from, file.text, { flag: 'wx' });
    return { from, to: join(folder, file.path) };
  });
}

/** Moves new files in and old ones out of the way; on any failure everything is moved back. */
function move(folder: string, staging: string, moves: readonly Move[], gone: readonly string[]): void {
  const undo: (() => void)[] = [];
  const shift = (from: string, to: string) => {
    renameSync(from, to);
    undo.push(() => renameSync(to, from));
  };
  const makeParent = (file: string) => {
    const parent = dirname(file);
    if (look(parent) !== undefined) return;
    makeParent(parent);
    mkdirSync(parent);
    undo.push(() => removeEmpty(parent));
  };
  try {
    moves.forEach(({ from, to }, i) => {
      makeParent(to);
      if (look(to) !== undefined) shift(to, join(staging, `old-${i}`));
      shift(from, to);
    });
    gone.forEach((path, i) => {
      shift(join(folder, path), join(staging, `gone-${i}`));
    });
  } catch (error) {
    for (const step of undo.reverse()) step();
    throw error;
  }
  for (const path of gone) {
    for (let parent = dirname(join(folder, path)); parent !== folder; parent = dirname(parent)) removeEmpty(parent);
  }
}
