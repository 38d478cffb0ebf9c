import { readFileSync, statSync } from 'node:fs';
import { Misuse } from '../io.js';
import { reasonOf } from './reason.js';

/** Far above any cabinet anybody writes; below what would keep a machine busy for minutes. */
const MOST_BYTES = 8 * 1024 * 1024;

/**
 * The text of a file.
 * @throws Misuse if it cannot be read, is no regular file, is too large, or is not UTF-8 text.
 */
export function readText(file: string, shown: string): string {
  const bytes = readBytes(file, shown);
  if (bytes.includes(0)) throw new Misuse(`cannot read ${shown}: it is not a text file (it holds zero bytes)`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Misuse(`cannot read ${shown}: it is not UTF-8 text; save it as UTF-8`);
  }
}

function readBytes(file: string, shown: string): Uint8Array {
  try {
    const stats = statSync(file);
    if (!stats.isFile()) throw new Misuse(`cannot read ${shown}: it is not a regular file`);
    if (stats.size > MOST_BYTES) {
      const megabytes = Math.ceil(stats.size / 1024 / 1024);
      throw new Misuse(
        `cannot read ${shown}: it is ${megabytes} MiB large, and the most is ${MOST_BYTES / 1024 / 1024}`,
      );
    }
    return readFileSync(file);
  } catch (error) {
    if (error instanceof Misuse) throw error;
    throw new Misuse(`cannot read ${shown}: ${reasonOf(error)}`);
  }
}
