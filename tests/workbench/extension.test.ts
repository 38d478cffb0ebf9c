import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { problems, putCursor, replaceText, squiggles } from './editor.js';
import { hoverOverSquiggle } from './hover.js';
import { quickFix } from './quick-fix.js';
import { command, commandOf, openBeside } from './quick-input.js';
import { inWorkbench } from './session.js';
import { SOON, until } from './until.js';
import { webview } from './webview.js';

const patient = { timeout: 60_000 };

/** What the language status says of the file at hand. */
async function status(page: Page): Promise<string> {
  return until(
    async () => {
      // One that is fading out can stand beside the one that has just come.
      const shown = page.locator('.hover-language-status').last();
      if (!(await shown.isVisible())) await page.locator('[id="status.languageStatus"]').click(SOON);
      const text = await shown.innerText(SOON);
      await page.keyboard.press('Escape');
      return text;
    },
    { between: () => page.keyboard.press('Escape') },
  );
}

describe.each(['node', 'browser'] as const)('around the text (%s)', (host) => {
  const session = inWorkbench(host, 'periodicals.joinery');

  test('the status of the file says that it fits, and in which units', async () => {
    await expect.poll(() => status(session.page), patient).toContain('Periodicals fits');
    expect(await status(session.page)).toContain('millimetres');
    await session.shot('status');
  });

  test('the code of a finding opens the page that explains it', async () => {
    const { page } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 15 from');
    await expect.poll(() => squiggles(page), patient).toBeGreaterThan(0);
    await until(async () => {
      await hoverOverSquiggle(page);
      await page.locator('.monaco-hover:not(.hidden) a', { hasText: 'spacer-not-in-stock' }).first().click(SOON);
      await page.locator('.tab.active', { hasText: 'spacer-not-in-stock' }).waitFor(SOON);
    });
    const shown = await webview(page, 'No stack of the jig');
    expect(await shown.locator('body').innerText()).toContain('This fails:');
    await session.shot('page-of-a-check');
    await openBeside(page, 'periodicals.joinery');
  });

  test('a server that is started again says the same', async () => {
    const { page } = session;
    await command(page, 'Dryfit: Restart Language Server');
    await expect.poll(() => status(page), patient).toContain('1 error');
    await expect.poll(() => problems(page), patient).toContain('Errors: 1');
  });
});

describe('settings of the folder', () => {
  const session = inWorkbench('node', 'periodicals.joinery');

  test('take effect without a reload', async () => {
    const { page, folder } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 15 from');
    await expect.poll(() => problems(page), patient).toContain('Errors: 1');
    const set = (settings: object) => writeFileSync(join(folder, '.vscode/settings.json'), JSON.stringify(settings));
    await command(page, 'Preferences: Open Workspace Settings (JSON)');
    await page.locator('.tab.active[data-resource-name="settings.json"]').waitFor();
    await expect.poll(() => existsSync(join(folder, '.vscode/settings.json')), patient).toBe(true);
    set({ 'dryfit.severity': { 'spacer-not-in-stock': 'warning' } });
    await expect.poll(() => problems(page), patient).toContain('Warnings: 1');
    set({ 'dryfit.joinery': false });
    await expect.poll(() => problems(page), patient).toBe('No Problems');
    set({});
    await expect.poll(() => problems(page), patient).toContain('Errors: 1');
  });
});

async function openWalkthrough(page: Page): Promise<void> {
  await commandOf(page, 'Welcome: Open Walkthrough...', 'From text to a milled');
  await page.locator('.getting-started-step').first().waitFor();
}

describe('the walkthrough', () => {
  const session = inWorkbench('node', 'shop.joinery');

  test('leads from nothing to a slot table', async () => {
    const { page, folder } = session;
    const step = (id: string) => page.locator(`.getting-started-step[data-step-id$="#${id}"]`);
    const done = (id: string) => step(id).locator('.codicon.complete, .codicon-getting-started-step-checked').first();
    await openWalkthrough(page);
    await page.getByRole('button', { name: 'Create the Example' }).click();
    await page.locator('.tab.active[data-resource-name="periodicals-rack.joinery"]').waitFor();
    expect(readFileSync(join(folder, 'workshop.joinery'), 'utf8')).toContain('material birch18');
    await expect.poll(() => status(page), patient).toContain('PeriodicalsRack fits');
    await replaceText(page, 'rear set back 16 from', 'rear set back 15 from');
    await expect.poll(() => problems(page), patient).toContain('Errors: 1');
    await putCursor(page, 'butt shelf');
    await quickFix(page, /Write 16 instead of 15/);
    await expect.poll(() => problems(page), patient).toBe('No Problems');
    // The cabinet is behind the walkthrough when its buttons are pressed.
    for (const [id, button, holds] of [
      ['draw', 'Open the Drawing', 'Drawing of periodicals-rack.joinery'],
      ['mill', 'Open the Slot Table', 'Slots of periodicals-rack.joinery'],
    ] as const) {
      await openWalkthrough(page);
      await step(id).click();
      await session.shot(`walkthrough-${id}`);
      await page.getByRole('button', { name: button }).click();
      await page.locator(`.tab[aria-label*="${holds}"]`).waitFor();
      await page.locator('.tab.active[data-resource-name="periodicals-rack.joinery"]').waitFor();
      await session.shot(`walkthrough-${id}-open`);
    }
    await webview(page, 'shelf');
    await openWalkthrough(page);
    await session.shot('walkthrough-done');
    for (const id of ['create', 'fits', 'break', 'cure', 'draw', 'mill'])
      await expect.poll(() => done(id).count(), { ...patient, message: id }).toBeGreaterThan(0);
  });
});
