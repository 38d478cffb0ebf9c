import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { costOfJoinery } from './cost.js';
import { comparedWithPeers } from './servers/compare.js';

/** `--write` keeps the figures in a file, `--rounds 3` is for a quick look; nothing here is a test. */
const rounds = Number(process.argv[process.argv.indexOf('--rounds') + 1]) || 10;
const cost = await costOfJoinery();
console.log(cost);
const peers = await comparedWithPeers(rounds);
console.log(peers);

if (process.argv.includes('--write')) {
  const machine = `${cpus()[0]?.model.trim()}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GB, Node ${process.versions.node}`;
  const file = join(process.cwd(), 'tests/measure/figures.md');
  writeFileSync(
    file,
    `# What the joinery costs\n\nWritten by \`npm run measure -- --write\` on ${machine}.\n\n${cost}\n# Beside other language servers\n\n${peers}`,
  );
  console.log(`written to ${file}`);
}
