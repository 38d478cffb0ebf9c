// Installs, from Debian, the editors that tests/editors tries the server in. Does nothing when they are there.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { installFromDebian } from './debian.mjs';

const there =
  ['nvim', 'emacs'].every((name) => spawnSync(name, ['--version']).status === 0) &&
  existsSync('/usr/lib/emacsen-common/packages/install/elpa-eglot');

if (!there) installFromDebian('editors', 'neovim', 'emacs-nox', 'elpa-eglot');
console.log(`editors: ${['nvim', 'emacs'].map((name) => firstLine(name)).join(', ')}`);

function firstLine(name) {
  return spawnSync(name, ['--version'], { encoding: 'utf8' }).stdout.split('\n')[0];
}
