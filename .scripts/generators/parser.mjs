import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { root } from '../root.mjs';

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
  for (const language of config.languages)
    colourNumbers(join(from, language.textMate.out), join(from, language.grammar));
}

/**
 * Colours numbers with their units, before strings: the generator knows keywords, comments and strings only, so that
 * the inch mark of `3/4"` would open a string. The pattern is the grammar's own NUMBER; the language has no escapes.
 */
function colourNumbers(textMateFile, grammarFile) {
  const number = /terminal NUMBER:\s*\/(.*)\/;/.exec(readFileSync(grammarFile, 'utf8'))?.[1];
  if (number === undefined) throw new Error(`${grammarFile} has no terminal NUMBER with a regular expression`);
  const textMate = JSON.parse(readFileSync(textMateFile, 'utf8'));
  const string = textMate.patterns.findIndex(({ name }) => name?.startsWith('string.'));
  Object.assign(textMate.patterns[string], { end: '"|$', patterns: [] });
  textMate.patterns.splice(string, 0, { name: 'constant.numeric.joinery', match: `(?<![\\p{L}\\d_])${number}` });
  delete textMate.repository['string-character-escape'];
  writeFileSync(textMateFile, `${JSON.stringify(textMate, null, 2)}\n`);
}
