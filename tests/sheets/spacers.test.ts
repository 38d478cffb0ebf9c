import { planWork } from '@dryfit/engine';
import { planJson, planTables, sheetPages, toPlain } from '@dryfit/output';
import { expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { BEAMED, withShop } from '../support/own-shop.js';
import { examineText } from '../support/read.js';
import { wordsOn } from './faults.js';

/** A job of which shelves with a setback of 22 go to both fences, in a shop with these spacers. */
async function jobWith(spacers: string, more = '') {
  const narrow = exampleText('periodicals.joinery').replace('deep = 560', 'deep = 320');
  const cut = more === '' ? narrow : narrow.replace('350 above base.bottom', `350 above base.bottom  ${more}`);
  const { results } = await examineText(withShop(cut, BEAMED.replace('6, 10, 12, 19, 25', spacers)));
  const items = results.map((result) => ({ result, count: 2 }));
  const job = { title: ['job Test'], items, plan: await planWork(items), errors: 0 };
  const pages = sheetPages(job, 'A4', { units: 'mm' });
  const printed = pages.map((page) =>
    wordsOn(page)
      .map(({ text }) => text)
      .join(' '),
  );
  const text = planTables(job)
    .map((table) => toPlain(table, { units: 'mm' }))
    .join('\n');
  return { plan: planJson(job), printed: printed.join('\n'), text };
}

/** Spacers as "2 of 12", by the data. */
const needed = (counts: readonly { readonly width: { readonly mm: number }; readonly count: number }[]): string[] =>
  counts.map(({ width, count }) => `${count} of ${width.mm}`);

test.each([
  {
    spacers: '6, 10, 12',
    fences: 'in turn',
    counts: ['1 of 12', '1 of 10'],
    box: 'left fence first, then the right',
    note: /goes from fence to fence: .* With 1 of 12, 1 of 10 more in the jig’s "spacers", pieces would be laid down \d+ times fewer/,
  },
  {
    spacers: '6, 10, 10, 12, 12',
    fences: 'both',
    counts: ['2 of 12', '2 of 10'],
    box: 'the same at each fence',
    note: /12 \+ 10 = 22, at each fence; 2 of 12, 2 of 10 in all/,
  },
  {
    spacers: '6, 16, 10, 12',
    fences: 'both',
    counts: ['1 of 16', '1 of 12', '1 of 10', '1 of 6'],
    box: '12 + 10 = 22 at the right',
    note: /16 \+ 6 = 22 at the left fence, 12 \+ 10 = 22 at the right one; /,
  },
])('with spacers $spacers both fences have them $fences', async ({ spacers, fences, counts, box, note }) => {
  const { plan, printed, text } = await jobWith(spacers);
  const own = plan.setUps.filter((setUp) => setUp.spacers);
  expect(own.map((setUp) => setUp.spacers?.fences)).toEqual([fences]);
  expect(own[0]?.beside.length === 0).toBe(fences === 'in turn');
  expect(needed(plan.spacers)).toEqual(counts);
  expect(printed).toContain(box);
  expect(text).toMatch(note);
  expect(text).toContain(`Spacers of the shop: ${counts.join(', ')}.`);
});

test('what a second stack would spare is what it spares', async () => {
  const [once, twice] = [await jobWith('6, 10, 12'), await jobWith('6, 10, 10, 12, 12')];
  const loads = ({ plan }: typeof once) => plan.setUps.reduce((sum, setUp) => sum + setUp.loads, 0);
  const told = once.plan.setUps.flatMap(({ spacers }) => (spacers?.lacks ? [spacers.lacks.spares] : []));
  expect(told).toHaveLength(1);
  expect(loads(once) - loads(twice)).toBe(told[0]);
});

test('a block is made for each fence where pieces lie at both at once', async () => {
  const { printed, text, plan } = await jobWith('6', 'spacer cut');
  expect(plan.spacers).toEqual([]);
  expect(printed).toContain('two blocks cut to that width: one at each fence');
  expect(text).toContain('A block of 22 at each fence: two are made.');
});
