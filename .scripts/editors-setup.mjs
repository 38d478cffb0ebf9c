// Installs, from Debian, the editors that tests/editors tries the server in. Does nothing when they are there.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const wanted = ['neovim', 'emacs-nox', 'elpa-eglot'];
const there =
  ['nvim', 'emacs'].every((name) => spawnSync(name, ['--version']).status === 0) &&
  existsSync('/usr/lib/emacsen-common/packages/install/elpa-eglot');

if (!there) {
  if (spawnSync('apt-get', ['--version']).status !== 0 || process.getuid?.() !== 0) {
    console.error(`editors: not all are there. Install them (Debian: apt-get install ${wanted.join(' ')}).`);
    process.exit(1);
  }
  console.log(`editors: installing ${wanted.join(', ')} from Debian`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  execFileSync('apt-get', ['update', '-qq'], { env, stdio: 'inherit' });
  execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...wanted], {
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}
console.log(`editors: ${['nvim', 'emacs'].map((name) => firstLine(name)).join(', ')}`);

function firstLine(name) {
  return spawnSync(name, ['--version'], { encoding: 'utf8' }).stdout.split('\n')[0];
}
