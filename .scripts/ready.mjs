// Makes node_modules agree with package-lock.json, using nothing but Node and npm.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';

const lockFile = join(root, 'package-lock.json');
const modules = join(root, 'node_modules');
const marker = join(modules, '.dryfit-ready');
const hash = createHash('sha256').update(readFileSync(lockFile)).digest('hex');

if (Number(process.versions.node.split('.')[0]) < 20) {
  console.error(`Dryfit needs Node 20 or newer; this is ${process.version}. Install a newer Node and run this again.`);
  process.exit(1);
}

if (!(existsSync(marker) && readFileSync(marker, 'utf8') === hash)) {
  if (installedAsLocked()) console.log('ready: node_modules agrees with package-lock.json');
  else install();
  writeFileSync(marker, hash);
}

/** True when npm's own record of what it installed names the same versions as the lock file. */
function installedAsLocked() {
  const record = join(modules, '.package-lock.json');
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  return Object.entries(JSON.parse(readFileSync(lockFile, 'utf8')).packages)
    .filter(([path, wanted]) => path.includes('node_modules/') && !wanted.optional && !wanted.devOptional)
    .every(([path, wanted]) => installed[path] !== undefined && installed[path].version === wanted.version);
}

function install() {
  console.log(`ready: ${existsSync(modules) ? 'package-lock.json changed' : 'first run'}, installing with npm ci`);
  const started = process.hrtime.bigint();
  const npm = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (npm.status !== 0) {
    console.error('ready: npm ci failed; its own message stands above.');
    process.exit(npm.status ?? 1);
  }
  console.log(`ready: installed in ${Number((process.hrtime.bigint() - started) / 1_000_000_000n)} s`);
}
