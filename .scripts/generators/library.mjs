import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../root.mjs';

export const name = 'built-in library as text';
export const paths = ['packages/language/src/library/generated'];

const folder = join(root, 'packages/language/src/library');

/** Every .joinery file of the library, by the name it is imported with, so that it needs no file system. */
export function write(into) {
  const parts = readdirSync(folder)
    .filter((file) => file.endsWith('.joinery'))
    .sort();
  const entries = parts.map((file) => {
    const text = readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n');
    const lines = text.split('\n').map((line) => `    ${JSON.stringify(line)},`);
    return [`  ${file.replace('.joinery', '')}: [`, ...lines, "  ].join('\\n'),"].join('\n');
  });
  const out = join(into, paths[0]);
  mkdirSync(out, { recursive: true });
  writeFileSync(
    join(out, 'texts.ts'),
    [
      '// Written by `npm run generate` from the .joinery files of the library.',
      'export const libraryTexts: Readonly<Record<string, string>> = {',
      ...entries,
      '};',
      '',
    ].join('\n'),
  );
}
