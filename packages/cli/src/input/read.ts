import { readFileSync, statSync } from 'node:fs';
import { mayBeRead, textOfBytes, Unreadable } from '@dryfit/language';
import { Misuse } from '../io.js';
import { reasonOf } from './reason.js';

/**
 * The text of a file.
 * @throws Misuse if it cannot be read, is no regular file, is too large, or is not UTF-8 text.
 */
export function readText(file: string, shown: string): string {
  try {
    return textOf(file);
  } catch (error) {
    throw new Misuse(`cannot read ${shown}: ${reasonOf(error)}`);
  }
}

/**
 * The text of a file, for who says itself which file it was.
 * @throws Unreadable with the reason in words, for a file that is there; what the system throws for one that is not
 */
export function textOf(file: string): string {
  try {
    const stats = statSync(file);
    mayBeRead({ isFile: stats.isFile(), size: stats.size });
    return textOfBytes(readFileSync(file));
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
    throw new Unreadable(reasonOf(error));
  }
}
