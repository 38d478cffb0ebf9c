import { createJoineryServices, formatText, readerOf } from '@dryfit/language';
import { plural, visible } from '@dryfit/output';
import { EmptyFileSystem } from 'langium';
import { findFiles } from '../input/find.js';
import { shownName } from '../input/name.js';
import { readText } from '../input/read.js';
import { CLEAN, ERRORS, type Io, MISUSE, Misuse } from '../io.js';
import { replaceText } from '../output/replace.js';

export interface FormatOptions {
  readonly check?: boolean | undefined;
}

/** Brings files into the one layout, or only tells which are not in it. */
export async function format(paths: readonly string[], options: FormatOptions, io: Io): Promise<number> {
  const { files, unreadable } = findFiles(paths, io.cwd);
  const reader = readerOf(createJoineryServices(EmptyFileSystem).joinery);
  const failed = [...unreadable];
  const changed: string[] = [];
  for (const file of files) {
    const name = shownName(file, io.cwd);
    try {
      const text = readText(file, name);
      const wanted = formatText(text, reader);
      if (wanted === text) continue;
      if (!options.check) await io.uninterrupted(() => replaceText(file, wanted, name));
      changed.push(name);
    } catch (error) {
      if (!(error instanceof Misuse)) throw error;
      failed.push(error.message);
    }
  }
  for (const problem of failed) io.err.write(`dryfit: ${visible(problem)}\n`);
  for (const name of changed) io.out.write(`${options.check ? 'would change' : 'formatted'} ${visible(name)}\n`);
  const left = files.length - changed.length - (failed.length - unreadable.length);
  io.out.write(
    `${plural(changed.length, 'file')} ${options.check ? 'to format' : 'formatted'}, ${left} already in order\n`,
  );
  if (failed.length > 0) return MISUSE;
  return options.check && changed.length > 0 ? ERRORS : CLEAN;
}
