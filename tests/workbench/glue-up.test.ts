import type { FrameLocator } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { focusText, replaceText } from './editor.js';
import { command } from './quick-input.js';
import { inWorkbench } from './session.js';
import { SOON, until } from './until.js';
import { webview } from './webview.js';

describe('the glue-up in the drawing', () => {
  const session = inWorkbench('node', 'periodicals.joinery');
  let drawing: FrameLocator;
  const shape = (id: string) => drawing.locator(`svg [data-shape="${id}"]`);
  const button = (name: string) => drawing.getByRole('button', { name, exact: true });
  const told = () => drawing.locator('.told[aria-live]').innerText();

  beforeAll(async () => {
    await focusText(session.page);
    await command(session.page, 'Dryfit: Open Drawing Beside');
    drawing = await webview(session.page, 'Whole cabinet');
    await drawing.locator('svg.dryfit-drawing').waitFor();
  });

  test('begins with the first step, and shows what is in it alone', async () => {
    await button('Glue-up, step by step').click();
    await expect.poll(told).toMatch(/^Step 1 of 3: Put base, shelf and top to lh, moving to the left\./);
    await shape('part shelf').first().waitFor();
    await expect.poll(() => shape('part rh').count()).toBe(0);
    await expect.poll(() => drawing.locator('svg .way .head').count()).toBe(3);
    await session.shot('glue-up-1-first');
  });

  test('goes on and back by keys, which stay on their button at either end', async () => {
    const next = button('Next step');
    await until(async () => {
      await next.focus(SOON);
      expect(await next.evaluate((element) => element.ownerDocument.hasFocus() && element.matches(':focus'))).toBe(
        true,
      );
    });
    for (const number of [2, 3]) {
      await session.page.keyboard.press('Enter');
      await expect.poll(told).toContain(`Step ${number} of 3`);
    }
    await shape('part rh').first().waitFor();
    expect(await told()).toContain('Drawn together: top / rh, base / rh, shelf / rh');
    await expect.poll(() => next.getAttribute('aria-disabled')).toBe('true');
    await session.page.keyboard.press('Enter');
    expect(await told()).toContain('Step 3 of 3');
    expect(await next.evaluate((element) => element.ownerDocument.activeElement === element)).toBe(true);
    await session.shot('glue-up-2-last');
    await button('Previous step').press('Enter');
    await expect.poll(told).toContain('Step 2 of 3: Slide back into');
  });

  test('follows the text, can be read as a list, and is left for the whole cabinet', async () => {
    await button('Previous step').press('Enter');
    await expect.poll(told).toContain('Connectors: 15 biscuit20.');
    await replaceText(session.page, 'biscuit20 by deep5', 'biscuit20 by lines 70, 180, 270');
    await expect.poll(told).toContain('Connectors: 9 biscuit20.');
    await button('As a table').click();
    const list = drawing.getByRole('listitem');
    await expect
      .poll(() => list.allInnerTexts())
      .toContainEqual(expect.stringMatching(/^Put base, shelf and top to lh/));
    await button('As a table').click();
    await button('All parts apart').click();
    await shape('part rh').first().waitFor();
    await expect.poll(() => drawing.locator('svg .way').count()).toBe(0);
  });
});
