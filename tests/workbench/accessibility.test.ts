import type { FrameLocator } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { focusText, replaceText } from './editor.js';
import { faults } from './faults.js';
import { command } from './quick-input.js';
import { inWorkbench, type Session } from './session.js';
import { webview } from './webview.js';

const themes = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  'high contrast': 'Default High Contrast',
  'high contrast light': 'Default High Contrast Light',
};

describe.each(Object.entries(themes))('the panels in %s', (name, theme) => {
  const session = inWorkbench('node', 'periodicals.joinery', { folder: { 'workbench.colorTheme': theme } });
  const shot = (what: string) => session.shot(`theme-${name.replaceAll(' ', '-')}-${what}`);

  test('the drawing has no serious fault, as a picture, as one part and as a table', async () => {
    await replaceText(session.page, 'rear set back 16 from', 'rear set back 22 from');
    const drawing = await opened(session, 'Dryfit: Open Drawing Beside', 'Whole cabinet', theme);
    await drawing.locator('.findings button').first().waitFor();
    await shot('1-whole');
    expect(await faults(drawing)).toEqual([]);
    await drawing.getByRole('combobox', { name: 'Part' }).selectOption('lh');
    await drawing.locator('svg [data-shape^="slot"]').first().waitFor();
    await shot('2-part');
    expect(await faults(drawing)).toEqual([]);
    await drawing.getByRole('button', { name: 'As a table' }).click();
    await drawing.locator('table').first().waitFor();
    await shot('3-table');
    expect(await faults(drawing)).toEqual([]);
  });

  test('the drawing has no serious fault at any step of the glue-up, drawn and as a list', async () => {
    await replaceText(session.page, 'rear set back 22 from', 'rear set back 16 from');
    const drawing = await opened(session, 'Dryfit: Open Drawing Beside', 'Whole cabinet', theme);
    const button = (title: string) => drawing.getByRole('button', { name: title, exact: true });
    const told = drawing.locator('.told[aria-live]');
    await button('As a table').click();
    await button('Whole cabinet').click();
    await button('Glue-up, step by step').click();
    for (let step = 1, steps = 1; step <= steps; step++) {
      await expect.poll(() => told.innerText()).toMatch(new RegExp(`^Step ${step} of `));
      steps = Number(/of (\d+)/.exec(await told.innerText())?.[1]);
      expect(steps).toBeGreaterThan(1);
      await shot(`5-step-${step}`);
      expect(await faults(drawing), `step ${step}`).toEqual([]);
      if (step < steps) await button('Next step').click();
    }
    await button('As a table').click();
    await drawing.getByRole('heading', { name: 'Glue-up' }).waitFor();
    expect(await faults(drawing), 'as a list').toEqual([]);
  });

  test('the slot table has no serious fault', async () => {
    const table = await opened(session, 'Dryfit: Open Slot Table', 'Copy as CSV', theme);
    await table.locator('table tbody tr').first().waitFor();
    await shot('4-slots');
    expect(await faults(table)).toEqual([]);
  });
});

/** A page, once it is in the colours of the theme. */
async function opened(session: Session, title: string, holds: string, theme: string): Promise<FrameLocator> {
  await focusText(session.page);
  await command(session.page, title);
  const page = await webview(session.page, holds);
  await page.locator(`body[data-vscode-theme-id="${theme}"]`).waitFor();
  return page;
}
