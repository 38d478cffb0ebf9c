// npm run package: stages the extension, packs it as .cache/dryfit-VERSION.vsix and prints its size.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { root } from './root.mjs';

const extension = join(root, 'packages/extension');
const stage = join(root, '.cache/package');
const manifest = JSON.parse(readFileSync(join(extension, 'package.json'), 'utf8'));
const vsix = join(root, `.cache/dryfit-${manifest.version}.vsix`);

rmSync(stage, { recursive: true, force: true });
mkdirSync(stage, { recursive: true });
const assets = [
  'example',
  'icons',
  'snippets',
  'walkthrough',
  'language-configuration.json',
  'README.md',
  'CHANGELOG.md',
];
for (const name of assets) {
  cpSync(join(extension, name), join(stage, name), { recursive: true });
}
cpSync(join(root, 'syntaxes'), join(stage, 'syntaxes'), { recursive: true });
cpSync(join(root, 'LICENSE'), join(stage, 'LICENSE'));
for (const bundle of [
  manifest.main,
  manifest.browser,
  './dist/server.cjs',
  './dist/server-worker.js',
  './dist/command-line.mjs',
  './dist/later',
  './dist/third-party.txt',
  './dist/webview',
  './dist/checks',
]) {
  cpSync(join(extension, bundle), join(stage, bundle), { recursive: true });
}
// Source maps stay at home, so no bundle asks for one.
for (const bundle of readdirSync(join(stage, 'dist')).filter((name) => /\.[cm]?js$/.test(name))) {
  const file = join(stage, 'dist', bundle);
  writeFileSync(file, readFileSync(file, 'utf8').replace(/^\/\/# sourceMappingURL=\S+\n?$/m, ''));
}
// The bundles hold everything and are no ES modules: the shipped manifest asks for no dependency, says nothing of
// modules, and is no longer private.
const { devDependencies: _bundled, private: _unpublished, type: _ofTheSources, ...shipped } = manifest;
writeFileSync(join(stage, 'package.json'), `${JSON.stringify(shipped, null, 2)}\n`);

const vsce = join(dirname(createRequire(import.meta.url).resolve('@vscode/vsce/package.json')), 'vsce');
const options = ['package', '--no-dependencies', '--allow-missing-repository', '--out', vsix];
execFileSync(process.execPath, [vsce, ...options], { cwd: stage, stdio: ['ignore', 'inherit', 'inherit'] });
console.log(`package: ${relative(root, vsix)}, ${(statSync(vsix).size / 1000).toFixed(0)} kB`);
