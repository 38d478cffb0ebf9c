import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What Dryfit is measured beside; installed when it is measured, and no part of the project. */
export const PEERS = { 'yaml-language-server': '2.0.0', '@prisma/language-server': '31.12.10' } as const;

/** Installs the peers from the npm registry, once, and tells where they are. */
export function installPeers(folder: string): string {
  const modules = join(folder, 'node_modules');
  const missing = Object.entries(PEERS).filter(([name, version]) => installed(modules, name) !== version);
  if (missing.length === 0) return modules;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ private: true }));
  const wanted = Object.entries(PEERS).map(([name, version]) => `${name}@${version}`);
  const npm = spawnSync('npm', ['install', '--no-audit', '--no-fund', '--ignore-scripts', '--save-exact', ...wanted], {
    cwd: folder,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (npm.status !== 0) throw new Error('the servers to compare with cannot be installed; npm’s message stands above');
  return modules;
}

function installed(modules: string, name: string): unknown {
  const file = join(modules, name, 'package.json');
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as { version?: string }).version : undefined;
}
