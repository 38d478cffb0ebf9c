import type { FrameLocator } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { cursor, focusText, lineOf, putCursor, replaceText } from './editor.js';
import { command } from './quick-input.js';
import { inWorkbench } from './session.js';
import { SOON, until } from './until.js';
import { webview } from './webview.js';

describe('the drawing beside the text', () => {
  const session = inWorkbench('node', 'periodicals.joinery');
  let drawing: FrameLocator;
  const svg = () => drawing.locator('svg.dryfit-drawing');
  const shape = (id: string) => drawing.locator(`svg [data-shape="${id}"]`);
  /** The drawing is made again when the page gets another size: a point is of use while that in which it was found stands. */
  const clickOn = (id: string) =>
    until(async () => {
      const position = await svg().evaluate(pointOf, id, SOON);
      await svg().click({ position, trial: true, ...SOON });
      expect(await svg().evaluate(pointOf, id, SOON)).toEqual(position);
      await svg().click({ position, ...SOON });
    });

  beforeAll(async () => {
    await focusText(session.page);
    await command(session.page, 'Dryfit: Open Drawing Beside');
    drawing = await webview(session.page, 'Whole cabinet');
    await svg().waitFor();
  });

  test('opens with every part of the cabinet in it', async () => {
    for (const part of ['lh', 'rh', 'top', 'base', 'shelf', 'back']) await shape(`part ${part}`).first().waitFor();
    await session.shot('drawing-1-whole');
  });

  test('a click on a part puts the cursor into its line', async () => {
    await clickOn('part shelf');
    const line = lineOf(session.folder, 'periodicals.joinery', 'part shelf');
    await expect.poll(async () => (await cursor(session.page)).line).toBe(line);
    await session.shot('drawing-2-clicked');
  });

  test('the cursor in a line lights its part up', async () => {
    await putCursor(session.page, 'back      : facing');
    await expect.poll(() => shape('part back').first().getAttribute('class')).toMatch(/\blit\b/);
    await expect.poll(() => shape('part shelf').first().getAttribute('class')).not.toMatch(/\blit\b/);
    await session.shot('drawing-3-lit');
  });

  test('one part is drawn square on with its slots, and a slot leads to its joint', async () => {
    await drawing.getByRole('combobox', { name: 'Part' }).selectOption('shelf');
    await expect.poll(() => drawing.locator('svg [data-shape^="slot shelf / lh shelf"]').count()).toBe(5);
    await session.shot('drawing-4-part');
    await drawing.locator('svg [data-shape^="slot shelf / lh shelf"]').first().dispatchEvent('click');
    const line = lineOf(session.folder, 'periodicals.joinery', 'butt shelf');
    await expect.poll(async () => (await cursor(session.page)).line).toBe(line);
    await drawing.getByRole('button', { name: 'Whole cabinet' }).click();
  });

  test('zoom and turn stay while the text is edited', async () => {
    for (const name of ['Nearer', 'Nearer', 'Turn right']) await drawing.getByRole('button', { name }).click();
    const [zoom, sides] = [
      () => drawing.locator('.zoom').innerText(),
      () => drawing.locator('svg .side').allTextContents(),
    ];
    await expect.poll(zoom).toBe('156 %');
    const before = [await zoom(), await sides()];
    await replaceText(session.page, 'parameter wide = 600', 'parameter wide = 610');
    await expect.poll(() => drawing.locator('svg .title').first().textContent()).toContain('610 wide');
    await expect.poll(async () => [await zoom(), await sides()]).toEqual(before);
    await session.shot('drawing-5-near');
    await replaceText(session.page, 'parameter wide = 610', 'parameter wide = 600');
  });

  test('while the text is broken the last good drawing stays, and says so', async () => {
    await replaceText(session.page, 'flush front', 'flush =');
    await expect.poll(() => drawing.locator('body').innerText()).toContain('broken');
    await shape('part shelf').first().waitFor();
    await session.shot('drawing-6-broken');
    await replaceText(session.page, 'flush =', 'flush front');
    await expect.poll(() => drawing.locator('body').innerText()).not.toContain('broken');
  });

  test('a finding is listed under the drawing and leads to its line', async () => {
    await replaceText(session.page, 'rear set back 16 from', 'rear set back 22 from');
    const finding = drawing.locator('.findings button').first();
    await finding.waitFor();
    await putCursor(session.page, 'units mm');
    await finding.click();
    const line = lineOf(session.folder, 'periodicals.joinery', 'butt shelf');
    await expect.poll(async () => (await cursor(session.page)).line).toBe(line);
    await session.shot('drawing-7-finding');
    await replaceText(session.page, 'rear set back 22 from', 'rear set back 16 from');
    await expect.poll(() => drawing.locator('.findings button').count()).toBe(0);
  });

  test('the lens over the cabinet follows a text that is left the moment it is mended', async () => {
    const { page } = session;
    const lens = async () => (await page.locator('.codelens-decoration').allInnerTexts()).join('; ');
    await replaceText(page, 'rear set back 16 from', 'rear set back 22 from');
    await expect.poll(lens).toContain('1 error');
    await replaceText(page, 'rear set back 22 from', 'rear set back 16 from');
    // The editor drops its question for lenses when the keyboard leaves it, and the server has it asked again.
    await page.locator('.tab', { hasText: 'Drawing of' }).click();
    await expect.poll(lens).toContain('nothing wrong');
  });

  test('has a table that says the same', async () => {
    await drawing.getByRole('button', { name: 'As a table' }).click();
    await expect.poll(() => drawing.locator('table').first().innerText()).toContain('564.6');
    await session.shot('drawing-8-table');
    await drawing.getByRole('button', { name: 'As a table' }).click();
    await svg().waitFor();
  });
});

/** Runs in the page: a point of the drawing, from its corner, where a shape is what is seen. */
function pointOf(svg: Element, shape: string): { x: number; y: number } {
  const box = svg.getBoundingClientRect();
  for (let y = 4; y < box.height; y += 4) {
    for (let x = 4; x < box.width; x += 4) {
      const seen = [
        [0, 0],
        [3, 0],
        [0, 3],
      ].map(([dx = 0, dy = 0]) =>
        document.elementFromPoint(box.x + x + dx, box.y + y + dy)?.closest('[data-shape], [data-again]'),
      );
      if (seen.every((one) => (one?.getAttribute('data-shape') ?? one?.getAttribute('data-again')) === shape))
        return { x: x + 1, y: y + 1 };
    }
  }
  throw new Error(`${shape} is nowhere seen`);
}
