import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { compare } from './compare.js';
import { plans } from './plans.js';
import { count, emptyTally, type Tally } from './tally.js';
import { Workshop } from './workshop.js';

/** So many assemblies come from one seed, and are counted together. */
const LOT = 500;
const wanted = Number(process.argv[process.argv.indexOf('--cases') + 1]) || 100_000;
const file = join(process.cwd(), 'tests/solids/campaign.json');

const before: Tally | undefined =
  existsSync(file) && !process.argv.includes('--fresh') ? (JSON.parse(readFileSync(file, 'utf8')) as Tally) : undefined;
const tally = before ?? emptyTally();
const shop = await Workshop.open();
while (tally.cases < wanted) {
  const seed = tally.cases / LOT + 1;
  for (const [i, plan] of fc.sample(plans, { seed, numRuns: LOT }).entries()) {
    const outcome = compare(shop, plan);
    count(
      tally,
      { ...outcome, faults: outcome.faults.map((fault) => `${plan.kind} (${seed}, ${i}): ${fault}`) },
      shop.chordError,
    );
  }
  // Written beside and moved into its place, so that a run that is stopped leaves whole figures.
  writeFileSync(`${file}.part`, `${JSON.stringify(tally, undefined, 2)}\n`);
  renameSync(`${file}.part`, file);
  console.log(`${tally.cases} of ${wanted}: ${tally.faults.length} faults, ${tally.open} too near to tell`);
}
process.exitCode = tally.faults.length > 0 ? 1 : 0;
