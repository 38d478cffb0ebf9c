import { execFileSync, spawnSync } from 'node:child_process';

/** Installs packages from Debian; says who needs them, and ends, on a machine where that cannot be done. */
export function installFromDebian(who, ...packages) {
  if (spawnSync('apt-get', ['--version']).status !== 0 || process.getuid?.() !== 0) {
    console.error(`${who}: something is missing. Install it (Debian: apt-get install ${packages.join(' ')}).`);
    process.exit(1);
  }
  console.log(`${who}: installing ${packages.join(', ')} from Debian`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  execFileSync('apt-get', ['update', '-qq'], { env, stdio: 'inherit' });
  execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}
