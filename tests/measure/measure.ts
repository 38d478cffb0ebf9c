import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { costOfJoinery } from './cost.js';
import { costOfOrders } from './orders.js';
import { costOfPlans } from './plans.js';
import { comparedWithPeers } from './servers/compare.js';
import { costOfSolids } from './solids.js';
import { trialsASecond } from './trials.js';

/**
 * `--write` keeps the figures in a file, `--rounds 3` is for a quick look, `--only solids` measures one part and leaves
 * the others' figures as they are; nothing here is a test.
 */
const after = (option: string): string | undefined =>
  process.argv.includes(option) ? process.argv[process.argv.indexOf(option) + 1] : undefined;
const rounds = Number(after('--rounds')) || 10;

interface Part {
  readonly name: string;
  readonly heading: string;
  readonly measure: () => Promise<string>;
}

const PARTS: readonly Part[] = [
  { name: 'joinery', heading: 'What the joinery costs', measure: costOfJoinery },
  { name: 'peers', heading: 'Beside other language servers', measure: () => comparedWithPeers(rounds) },
  { name: 'solids', heading: 'What it costs to look for clashes', measure: costOfSolids },
  { name: 'orders', heading: 'What it costs to know an order', measure: costOfOrders },
  { name: 'plans', heading: 'What it costs to plan a job', measure: costOfPlans },
  { name: 'trials', heading: 'Errors added up by trial', measure: trialsASecond },
];

const file = join(process.cwd(), 'tests/measure/figures.md');
const only = after('--only');
const machine = `${cpus()[0]?.model.trim()}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GB, Node ${process.versions.node}`;

for (const { name, heading, measure } of PARTS) {
  if (only !== undefined && only !== name) continue;
  const figures = await measure();
  console.log(figures);
  if (process.argv.includes('--write')) {
    keep(heading, `Written by \`npm run measure -- --write\` on ${machine}.\n\n${figures.trimEnd()}\n`);
    console.log(`written to ${file}`);
  }
}

/** Puts figures under their heading, in the order of the parts; what stands under the others stays. */
function keep(heading: string, figures: string): void {
  const before = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const sections = new Map(
    before
      .split(/^# /m)
      .filter((section) => section.trim() !== '')
      .map((section): [string, string] => {
        const end = section.indexOf('\n');
        return [section.slice(0, end).trim(), section.slice(end).trim()];
      }),
  );
  sections.set(heading, figures.trim());
  const known = PARTS.map((part) => part.heading).filter((name) => sections.has(name));
  writeFileSync(file, `${known.map((name) => `# ${name}\n\n${sections.get(name)}\n`).join('\n')}`);
}
