import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { cursor, fileText, focusText, lineOf, replaceText, save } from './editor.js';
import { reload } from './reload.js';
import { inWorkbench } from './session.js';
import { SOON, until } from './until.js';
import { webview } from './webview.js';

describe('ways to a drawing and out of it', () => {
  const session = inWorkbench('node', 'periodicals.joinery', { user: { 'files.autoSave': 'off' } });
  /** A lens over the cabinet that is so many millimetres high. */
  const lens = (high: number, words: RegExp) =>
    session.page
      .locator('.codelens-decoration', { hasText: `× ${high} mm` })
      .locator('a', { hasText: words })
      .first();
  /** A lens is drawn once the server has said how its cabinet is. */
  const scrolledTo = (key: string, sight: Locator) =>
    until(async () => {
      await focusText(session.page);
      await session.page.keyboard.press(key);
      await sight.waitFor(SOON);
    });

  beforeAll(async () => {
    const text = fileText(session.folder, 'periodicals.joinery').replace(/\njob [\s\S]*/, '\n');
    const [before = '', cabinet = ''] = text.split(/^(?=cabinet )/m);
    const low = cabinet
      .replace('cabinet Periodicals', 'cabinet Low')
      .replace('parameter high = 720', 'parameter high = 700');
    // The first cabinet is a few lines below, so that both lenses are on the screen.
    writeFileSync(join(session.folder, 'two.joinery'), `${before}${low}\n${cabinet}`);
    await session.show('two.joinery');
    await focusText(session.page);
  });

  test('the lens over a cabinet opens the drawing at that cabinet', async () => {
    await scrolledTo('Control+End', lens(720, /nothing wrong/));
    await until(async () => {
      // One that is drawn anew while it is clicked on is clicked on in vain.
      await lens(720, /nothing wrong/).click(SOON);
      await session.page.locator('.tab', { hasText: 'Drawing of' }).waitFor(SOON);
    });
    const drawing = await webview(session.page, 'Whole cabinet');
    await expect.poll(() => drawing.locator('svg .title').first().textContent()).toMatch(/^Periodicals, /);
    await session.page.locator('.tab[data-resource-name="two.joinery"]').click();
    await scrolledTo('Control+Home', lens(700, /nothing wrong/));
    await until(async () => {
      await lens(700, /nothing wrong/).click(SOON);
      const title = drawing.locator('svg .title').first();
      await expect.poll(() => title.textContent(SOON), SOON).toMatch(/^Low, .*700 high/);
    });
    await session.shot('panel-6-lens');
  });

  test('the other lens opens the slot table of that cabinet alone', async () => {
    await until(async () => {
      await lens(700, /^slot table$/).click(SOON);
      await session.page.locator('.tab', { hasText: 'Slots of' }).waitFor(SOON);
    });
    const table = await webview(session.page, 'Copy as CSV');
    await expect.poll(() => table.getByRole('combobox', { name: 'Cabinet' }).inputValue()).toBe('Low');
    await session.page.locator('.tab', { hasText: 'Drawing of' }).click();
  });

  test('a name beside the drawing leads to its part by the mouse and by keys', async () => {
    const drawing = await webview(session.page, 'Whole cabinet');
    const name = (part: string) => drawing.locator(`svg [data-names="part ${part}"]`);
    const { page, folder } = session;
    await name('back').locator('text').click();
    await expect.poll(async () => (await cursor(page)).line).toBe(lineOf(folder, 'two.joinery', 'part back'));
    // The keyboard goes from the text to the page only by a click, and that takes its time.
    await drawing.locator('summary').click();
    const lh = drawing.locator('svg [data-shape="part lh"]');
    await expect
      .poll(async () => {
        await lh.focus();
        return await lh.evaluate((part) => part.matches(':focus'));
      })
      .toBe(true);
    await page.keyboard.press('End');
    const last = (await drawing.locator('svg [data-names]:focus').getAttribute('data-names'))?.replace('part ', '');
    await session.shot('panel-7-name');
    await page.keyboard.press('Enter');
    const line = fileText(folder, 'two.joinery')
      .split('\n')
      .findIndex((one) => new RegExp(`part .*\\b${last}\\b`).test(one));
    await expect.poll(async () => (await cursor(page)).line).toBe(line + 1);
  });

  test('what is cut into the far side of a part is dashed, and can be left out', async () => {
    const drawing = await webview(session.page, 'Whole cabinet');
    const hidden = () => drawing.locator('svg polygon.behind').count();
    await expect.poll(hidden).toBeGreaterThan(10);
    await drawing.getByRole('button', { name: 'Hidden lines' }).click();
    await expect.poll(hidden).toBe(0);
    await drawing.getByRole('button', { name: 'Hidden lines' }).click();
    await drawing.getByRole('button', { name: 'From behind' }).click();
    await expect.poll(() => drawing.locator('svg .side').allTextContents()).toContain('rear');
    await session.shot('panel-8-behind');
  });

  test('a slip in the text marks the drawing, also after a reload, and its mending takes the mark away', async () => {
    let drawing = await webview(session.page, 'Whole cabinet');
    await session.page.locator('.tab[data-resource-name="two.joinery"]').click();
    await replaceText(session.page, 'flush front', 'flush =');
    await expect.poll(() => drawing.locator('.standing').innerText()).toContain('drawn from the last text');
    await save(session.page);
    await reload(session.page, '/two.joinery"');
    drawing = await webview(session.page, 'Whole cabinet');
    await expect.poll(() => drawing.locator('.standing').innerText()).toContain('what could be read of it');
    await session.shot('panel-9-broken');
    await session.page.locator('.tab[data-resource-name="two.joinery"]').click();
    await replaceText(session.page, 'flush =', 'flush front');
    await expect.poll(() => drawing.locator('.standing').count()).toBe(0);
  });
});
