import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Example {
  /** File name without its folder: "bookcase.joinery". */
  readonly name: string;
  readonly path: string;
  readonly text: string;
}

/** Folder of the examples, with its closing separator. */
export const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url));

/** The example files of a folder, by name; those that fail are in `broken`. */
export function examples(folder: '' | 'broken' = ''): Example[] {
  const directory = join(EXAMPLES, folder);
  return readdirSync(directory)
    .filter((name) => name.endsWith('.joinery'))
    .sort()
    .map((name) => ({ name, path: join(directory, name), text: readFileSync(join(directory, name), 'utf8') }));
}

/** Text of one example by its file name. */
export const exampleText = (name: string): string => readFileSync(join(EXAMPLES, name), 'utf8');
