import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../root.mjs';

export const name = 'list of the tables';
export const paths = ['packages/output/src/generated'];

/** A table is a source file in the folder `tables` that exports `table`. */
export function write(into) {
  const names = readdirSync(join(root, 'packages/output/src/tables'))
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .map((file) => file.slice(0, -'.ts'.length))
    .sort();
  const out = join(into, paths[0]);
  mkdirSync(out, { recursive: true });
  writeFileSync(
    join(out, 'tables.ts'),
    [
      '// Written by `npm run generate` from the files in the folder `tables`.',
      "import type { TableMaker } from '../batch.js';",
      ...names.map((table) => `import { table as ${table} } from '../tables/${table}.js';`),
      '',
      `const found: readonly TableMaker[] = [${names.join(', ')}];`,
      '',
      '/** Every table there is, in the order in which they are read. */',
      'export const tables: readonly TableMaker[] = [...found].sort((a, b) => a.rank - b.rank);',
      '',
    ].join('\n'),
  );
}
