import { type Plan, planWork, type WorkItem } from '@dryfit/engine';
import { planJson, planTables, toPlain } from '@dryfit/output';
import { expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { withShop } from '../support/own-shop.js';
import { examineText } from '../support/read.js';

/** Cabinets of which no two are alike, on a bench with one fence: so many settings that no plan of them is proven at once. */
async function job(): Promise<readonly WorkItem[]> {
  const bench = `jig own { bed 900  fences left  stop 0 to 760 step 0.5  spacers 6, 10, 12, 19, 25 within 0.2 }
pose { edge slots reference down or up  face slots reference up or down }`;
  const text = withShop(exampleText('periodicals.joinery'), bench).replace('by deep5', 'by wide3');
  const start = text.indexOf('cabinet Periodicals');
  const cabinet = text.slice(start, text.indexOf('\njob '));
  const made = [560, 480, 400, 320, 540, 460].map((deep, i) =>
    cabinet
      .replace('cabinet Periodicals', `cabinet Made${i}`)
      .replace('deep = 560', `deep = ${deep}`)
      .replace('bottom 350 above', `bottom ${200 + 35 * (i % 4)} above`),
  );
  const { results } = await examineText(`${text.slice(0, start)}${made.join('\n')}`);
  return results.map((result) => ({ result, count: 1 }));
}

/** A clock that is past any limit as soon as it is looked at again. */
const past = () => {
  let now = 0;
  return () => {
    now += 1e9;
    return now;
  };
};

const told = (items: readonly WorkItem[], plan: Plan): string =>
  planTables({ title: ['job'], items, plan, errors: 0 })
    .map((table) => toPlain(table, { units: 'mm' }))
    .join('\n');

test('a plan whose time is up is whole, has its bound, and says so', async () => {
  const items = await job();
  expect(items).toHaveLength(6);
  const [hasty, patient] = [await planWork(items, { clock: past() }), await planWork(items, { timeLimitMs: 600_000 })];
  expect([hasty.proven, hasty.ranOut, patient.proven, patient.ranOut]).toEqual([false, true, true, false]);
  expect(hasty.atLeast.le(patient.change)).toBe(true);
  expect(hasty.change.ge(patient.change)).toBe(true);
  const slots = ({ setUps }: Plan) => setUps.reduce((sum, setUp) => sum + setUp.slots, 0);
  expect(slots(hasty)).toBe(slots(patient));
  expect(told(items, hasty)).toContain('; the time was up before more was proven)');
  expect(told(items, patient)).not.toContain('the time was up');
  expect([hasty, patient].map((plan) => planJson({ title: ['job'], items, plan, errors: 0 }).ranOut)).toEqual([
    true,
    false,
  ]);
});
