// Everything in the tree that a program writes: what it is, which paths it owns, how it is written into a folder.
// `npm run generate` writes into the tree, `.scripts/stale.mjs` into a temporary folder to compare.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** @type {{ name: string, paths: string[], write: (into: string) => void | Promise<void> }[]} */
export const generators = [
  {
    name: 'parser, AST types and TextMate grammar',
    paths: ['packages/language/src/generated', 'syntaxes'],
    write: writeParser,
  },
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
