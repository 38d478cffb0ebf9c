// Prepares the real workbench that tests/workbench drives: VS Code's server from npm, and Debian's Chromium.
// Cached in .cache/workbench; does nothing when both are there in the wanted version.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { installFromDebian } from './debian.mjs';
import { root } from './root.mjs';

/** code-server 4.100.3 carries VS Code 1.100.3, the oldest the extension declares, and runs on Node 20. */
const version = '4.100.3';
const folder = join(root, '.cache/workbench');
const installed = join(folder, 'node_modules/code-server/package.json');
const done = join(folder, '.complete');

if (!(existsSync(done) && readFileSync(done, 'utf8') === version && existsSync(installed))) installWorkbench();
// Another browser of that kind can be named in CHROMIUM.
if (chromium() === undefined) installFromDebian('workbench', 'chromium', 'fonts-dejavu-core');
console.log(`workbench: code-server ${version}, ${chromium()}`);

function installWorkbench() {
  console.log(`workbench: installing code-server ${version} into .cache/workbench`);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  // Without install scripts: they build native modules that the test does not need.
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  npm(folder, ['install', ...quiet, '--save-exact', `code-server@${version}`]);
  const code = join(folder, 'node_modules/code-server/lib/vscode');
  // `npm ci` refuses here: the package's own shrinkwrap is out of step with its manifest.
  npm(code, ['install', '--omit=dev', ...quiet]);
  npm(join(code, 'extensions'), ['install', '--omit=dev', ...quiet]);
  writeFileSync(done, version);
}

function npm(cwd, words) {
  // npm's run-time variables name this project; without them npm reads the folder it is started in.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^npm_(config_local_prefix|package_)/.test(name)),
  );
  execFileSync('npm', words, { cwd, env, stdio: 'inherit', shell: process.platform === 'win32' });
}

/** Path of the browser to drive, or undefined. */
function chromium() {
  const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'];
  return places.find((place) => place !== undefined && place !== '' && existsSync(place));
}
