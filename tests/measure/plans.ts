import { type Plan, planWork, sequenceSetups } from '@dryfit/engine';
import { fitExample } from '../support/read.js';

/**
 * What it costs to plan jobs of so many cabinets, all of different sizes, and what the plan saves beside going cabinet by
 * cabinet. Nothing here is a test.
 */
const CABINETS = [10, 100, 1000] as const;

/** Periodicals of widths and depths of their own. */
async function planOf(count: number): Promise<{ readonly plan: Plan; readonly seconds: number; readonly fit: number }> {
  const before = performance.now();
  const items = [];
  for (let i = 0; i < count; i++) {
    const [wide, deep] = [400 + (i % 250), [560, 480, 400, 320][i % 4] ?? 560];
    items.push({
      result: await fitExample('periodicals.joinery', 'Periodicals', { wide, deep, high: 700 + (i % 7) }),
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
  for (const count of CABINETS) {
    const { plan, seconds, fit } = await planOf(count);
    times.push(seconds);
    const gap = plan.change.isZero() ? 0 : 1 - plan.atLeast.div(plan.change).toNumber();
    rows.push(
      `| ${count} | ${plan.setUps.length} | ${(seconds / fit).toFixed(2)} | ${(gap * 100).toFixed(1)} % | ${plan.change.div(plan.naive.change).toNumber().toFixed(3)} | ${plan.change.div(plan.grouped.change).toNumber().toFixed(3)} |`,
    );
  }
  const [, middle = 1, last = 1] = times;
  return `Jobs of cabinets of which no two are alike. Time beside what it takes to read and work the cabinets out; from 100 to
1,000 cabinets it grows with the power ${Math.log10(last / middle).toFixed(2)} of their number. The gap is what is left between the plan and what is
proven to be least. Changing in parts of what it takes cabinet by cabinet, and with like settings together as they come.

| cabinets | set-ups | time | gap | of cabinet by cabinet | of grouping alone |
| --- | --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}
