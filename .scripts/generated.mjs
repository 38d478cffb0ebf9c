// Everything in the tree that a program writes: what it is, which paths it owns, how it is written into a folder.
// `npm run generate` writes into the tree, `.scripts/stale.mjs` into a temporary folder to compare.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** @type {{ name: string, paths: string[], write: (into: string) => void | Promise<void> }[]} */
export const generators = [
  {
    name: 'parser, AST types and TextMate grammar',
    paths: ['packages/language/src/generated', 'syntaxes'],
    write: writeParser,
  },
  { name: 'list of tables', paths: ['packages/output/src/generated'], write: writeTables },
  { name: 'JSON Schemas', paths: ['packages/output/schema'], write: writeSchemas },
];

/** Runs the parser generator with every output path of langium-config.json moved into the given folder. */
function writeParser(into) {
  const require = createRequire(import.meta.url);
  const cli = join(dirname(require.resolve('langium-cli/package.json')), 'bin/langium.js');
  const configFile = join(root, '.cache', `langium-config-${process.pid}.json`);
  const from = dirname(configFile);
  const place = (path) => relative(from, join(into, path));
  const config = JSON.parse(readFileSync(join(root, 'langium-config.json'), 'utf8'));
  config.out = place(config.out);
  for (const language of config.languages) {
    language.grammar = relative(from, join(root, language.grammar));
    language.textMate.out = place(language.textMate.out);
  }
  mkdirSync(from, { recursive: true });
  writeFileSync(configFile, JSON.stringify(config));
  try {
    execFileSync(
      process.execPath,
      ['--require', join(root, '.scripts/groupby.cjs'), cli, 'generate', '--mode=production', '--file', configFile],
      { cwd: root, stdio: 'inherit' },
    );
  } finally {
    if (existsSync(configFile)) rmSync(configFile);
  }
}

/** One line for each file in the folder of tables, so that a new table is one new file. */
function writeTables(into) {
  const names = readdirSync(join(root, 'packages/output/src/tables'))
    .filter((file) => file.endsWith('.ts') && !/\.(test|fixture)\.ts$/.test(file))
    .map((file) => file.slice(0, -'.ts'.length))
    .sort();
  const lines = [
    '// Written by `npm run generate` from the files in the folder `tables`.',
    "import type { TableMaker } from '../batch.js';",
    ...names.map((name) => `import { table as ${name} } from '../tables/${name}.js';`),
    '',
    `const found: readonly TableMaker[] = [${names.join(', ')}];`,
    '',
    '/** Every table there is, in the order in which they are read. */',
    'export const tables: readonly TableMaker[] = [...found].sort((a, b) => a.rank - b.rank);',
    '',
  ];
  write(join(into, 'packages/output/src/generated/tables.ts'), lines.join('\n'));
}

/** The published schemas, written from the declarations that are also the types of what they describe. */
async function writeSchemas(into) {
  const bundle = join(root, '.cache', `schemas-${process.pid}.mjs`);
  await build({
    entryPoints: [join(root, 'packages/output/src/schemas.ts')],
    outfile: bundle,
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    mainFields: ['module', 'main'],
    conditions: ['source'],
    logLevel: 'warning',
  });
  try {
    const { schemas } = await import(pathToFileURL(bundle).href);
    for (const [name, schema] of Object.entries(schemas)) {
      write(join(into, 'packages/output/schema', `${name}.schema.json`), `${JSON.stringify(schema, undefined, 2)}\n`);
    }
  } finally {
    rmSync(bundle);
  }
}

function write(file, text) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}
