import { type Plan, planWork, sequenceSetups } from '@dryfit/engine';
import { exampleText } from '../support/examples.js';
import { fitExample } from '../support/read.js';

/**
 * What it costs to plan jobs of so many cabinets, all of different sizes, their shelves at so many heights and so at as many
 * stops, and what the plan saves beside going cabinet by cabinet. Nothing here is a test.
 */
const JOBS = [
  { cabinets: 10, heights: 2 },
  { cabinets: 100, heights: 4 },
  { cabinets: 1000, heights: 5 },
  // Few cabinets with a stop each: what the number of settings costs, and not that of pieces.
  { cabinets: 10, heights: 10 },
] as const;

/** The example with the height of its shelf to be given. */
const SHELVED = exampleText('periodicals.joinery')
  .replace('parameter wide = 600', 'parameter wide = 600\n  parameter shelved = 350')
  .replace('bottom 350 above', 'bottom shelved above');

/** Periodicals of widths and depths of their own, and of some heights of their shelves. */
async function planOf({
  cabinets,
  heights,
}: (typeof JOBS)[number]): Promise<{ readonly plan: Plan; readonly seconds: number; readonly fit: number }> {
  const before = performance.now();
  const items = [];
  for (let i = 0; i < cabinets; i++) {
    const [wide, deep] = [400 + (i % 250), [560, 480, 400, 320][i % 4] ?? 560];
    const sizes = { wide, deep, high: 700 + (i % 7), shelved: 200 + 35 * (i % heights) };
    items.push({
      result: await fitExample('periodicals.joinery', 'Periodicals', sizes, { 'periodicals.joinery': SHELVED }),
      count: 1,
    });
  }
  const worked = performance.now();
  const plan = await planWork(items);
  return { plan, seconds: (performance.now() - worked) / 1000, fit: (worked - before) / 1000 };
}

/** A table of plans, as Markdown. */
export async function costOfPlans(): Promise<string> {
  // The solver is loaded once, outside of what is measured.
  await sequenceSetups(Array.from({ length: 30 }, (_, i) => Array.from({ length: 30 }, (_unused, j) => (i * j) % 7)));
  const rows: string[] = [];
  const times: number[] = [];
  for (const job of JOBS) {
    const { plan, seconds, fit } = await planOf(job);
    times.push(seconds);
    const gap = plan.change.isZero() ? 0 : 1 - plan.atLeast.div(plan.change).toNumber();
    rows.push(
      `| ${job.cabinets} | ${job.heights} | ${plan.setUps.length} | ${(seconds / fit).toFixed(2)} | ${(gap * 100).toFixed(1)} % | ${plan.change.div(plan.naive.change).toNumber().toFixed(3)} | ${plan.change.div(plan.grouped.change).toNumber().toFixed(3)} |`,
    );
  }
  const [, middle = 1, last = 1] = times;
  return `Jobs of cabinets of which no two are alike, with shelves at so many heights. Time beside what it takes to read and
work the cabinets out; from 100 to 1,000 cabinets it grows with the power ${Math.log10(last / middle).toFixed(2)} of their number. The gap
is what is left between the plan and what is proven to be least. Changing in parts of what it takes cabinet by cabinet, and with like settings together as they come.

| cabinets | heights | set-ups | time | gap | of cabinet by cabinet | of grouping alone |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}
