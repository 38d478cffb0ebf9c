import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { root } from '../root.mjs';
import { refine } from '../textmate.mjs';

export const name = 'parser, AST types and TextMate grammar';
export const paths = ['packages/language/src/generated', 'syntaxes'];

/** Runs the parser generator with every output path of langium-config.json moved into the given folder. */
export function write(into) {
  const cli = join(root, 'node_modules/langium-cli/bin/langium.js');
  const configFile = join(root, '.cache', `langium-config-${process.pid}.json`);
  const from = dirname(configFile);
  const config = JSON.parse(readFileSync(join(root, 'langium-config.json'), 'utf8'));
  const outputs = [config.out, ...config.languages.map((language) => language.textMate.out)];
  config.out = relative(from, join(into, config.out));
  for (const language of config.languages) {
    language.grammar = relative(from, join(root, language.grammar));
    language.textMate.out = relative(from, join(into, language.textMate.out));
  }
  for (const output of outputs) mkdirSync(dirname(join(into, output)), { recursive: true });
  mkdirSync(from, { recursive: true });
  writeFileSync(configFile, JSON.stringify(config));
  try {
    const polyfill = ['--require', join(root, '.scripts/groupby.cjs')];
    const words = ['generate', '--mode=production', '--file', configFile];
    execFileSync(process.execPath, [...polyfill, cli, ...words], { cwd: root, stdio: 'inherit' });
  } finally {
    rmSync(configFile, { force: true });
  }
  for (const language of config.languages) {
    const [textMate, grammar] = [language.textMate.out, language.grammar].map((path) => join(from, path));
    writeFileSync(textMate, `${JSON.stringify(colours(readFileSync(grammar, 'utf8'), textMate), null, 2)}\n`);
  }
}

const colours = (grammar, file) => refine(JSON.parse(readFileSync(file, 'utf8')), grammar);
