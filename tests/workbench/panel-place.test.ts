import type { FrameLocator, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { focusText, replaceText } from './editor.js';
import { command } from './quick-input.js';
import { reload } from './reload.js';
import { inWorkbench } from './session.js';
import { webview } from './webview.js';

describe('a drawing that is moved about', () => {
  const session = inWorkbench('node', 'periodicals.joinery');
  let drawing: FrameLocator;

  beforeAll(async () => {
    await focusText(session.page);
    await command(session.page, 'Dryfit: Open Drawing Beside');
    drawing = await webview(session.page, 'Whole cabinet');
    await drawing.locator('svg [data-shape="part shelf"]').dispatchEvent('click');
    for (const name of ['Nearer', 'Nearer', 'Turn right']) await drawing.getByRole('button', { name }).click();
    await drawing.getByRole('slider', { name: 'Apart' }).fill('90');
  });

  test('comes back after a reload of the window as it was, and follows the text', async () => {
    const as = { zoom: '156 %', apart: '90', chosen: ['part shelf'] };
    await expect.poll(() => looked(drawing)).toMatchObject(as);
    const before = await looked(drawing);
    await reload(session.page, '"zoom":1.5625', '"apart":0.9', '"chosen":"part shelf"');
    drawing = await webview(session.page, 'Whole cabinet');
    await expect.poll(() => looked(drawing)).toEqual(before);
    await expect.poll(() => drawing.locator('.places li').count()).toBeGreaterThan(0);
    await session.shot('panel-1-reloaded');
    await follows(session.page, drawing, 'parameter wide = 600', 'parameter wide = 630');
    await expect.poll(() => looked(drawing)).toEqual(before);
  });

  test('stays as it is in another group of editors', async () => {
    const before = await looked(drawing);
    await focusDrawing(session.page);
    await command(session.page, 'View: Move Editor into Left Group');
    drawing = await webview(session.page, 'Whole cabinet');
    await expect.poll(() => looked(drawing)).toEqual(before);
    await focusDrawing(session.page);
    await command(session.page, 'View: Move Editor into Right Group');
    drawing = await webview(session.page, 'Whole cabinet');
    await expect.poll(() => looked(drawing)).toEqual(before);
    await follows(session.page, drawing, 'parameter wide = 630', 'parameter wide = 610');
    await expect.poll(() => looked(drawing)).toEqual(before);
  });

  test('stays as it is, and follows the text, in a window of its own', async () => {
    const before = await looked(drawing);
    await focusDrawing(session.page);
    const [other] = await Promise.all([
      session.page.context().waitForEvent('page'),
      command(session.page, 'View: Move Editor into New Window'),
    ]);
    drawing = await webview(other, 'Whole cabinet');
    await expect.poll(() => looked(drawing)).toEqual(before);
    await follows(session.page, drawing, 'parameter wide = 610', 'parameter wide = 600');
    await session.shot('panel-2-window-left');
    await other.close();
  });
});

/** The panel that stands beside the text comes to the front, with the keyboard in it. */
async function focusDrawing(page: Page): Promise<void> {
  await page.locator('.tab', { hasText: 'Drawing of' }).click();
}

/** How the drawing is looked at, and what is chosen in it. */
async function looked(drawing: FrameLocator) {
  const svg = drawing.locator('svg.dryfit-drawing');
  return {
    zoom: await drawing.locator('.zoom').innerText(),
    // Which way the reader looks at it, in words that are drawn.
    sides: await svg.locator('.side').allTextContents(),
    apart: await drawing.getByRole('slider', { name: 'Apart' }).inputValue(),
    chosen: await svg
      .locator('.chosen[data-shape]')
      .evaluateAll((found) => found.map((one) => one.getAttribute('data-shape'))),
  };
}

/** An edit of the text comes through to the drawing. */
async function follows(page: Page, drawing: FrameLocator, found: string, text: string): Promise<void> {
  await replaceText(page, found, text);
  const wide = /\d+$/.exec(text)?.[0];
  await expect.poll(() => drawing.locator('svg .title').first().textContent()).toContain(`${wide} wide`);
}
