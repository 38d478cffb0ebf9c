import { chmodSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { reasonOf } from '../input/reason.js';
import { Misuse } from '../io.js';

/**
 * Puts a new text in the place of a file's, whole or not at all: it is written beside the file, with the file's
 * permissions, and moved over it. A link stays a link; what it leads to is replaced.
 * @throws Misuse, with the file as it was, if that cannot be done.
 */
export function replaceText(file: string, text: string, shown: string): void {
  let beside: string | undefined;
  try {
    const target = realpathSync(file);
    beside = join(dirname(target), `.${basename(target)}.${process.pid}.dryfit`);
    writeFileSync(beside, text, { flag: 'wx' });
    chmodSync(beside, statSync(target).mode);
    renameSync(beside, target);
  } catch (error) {
    if (beside !== undefined) rmSync(beside, { force: true });
    throw new Misuse(`cannot write ${shown}: ${reasonOf(error)}`);
  }
}
