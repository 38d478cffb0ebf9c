import { describe, expect, test } from 'vitest';
import { command, hoverOverSquiggle, replaceText, squiggles } from './editor.js';
import { inWorkbench } from './session.js';

describe('look', () => {
  const session = inWorkbench('node', 'periodicals.joinery', {});
  test('look', async () => {
    const { page } = session;
    await page.waitForTimeout(6000);
    // language status
    await page
      .locator('[id="status.languageStatus"]')
      .click()
      .catch(() => undefined);
    await page.waitForTimeout(800);
    await session.shot('look-status');
    await page.keyboard.press('Escape');
    await replaceText(page, 'rear set back 16 from', 'rear set back 15 from');
    await expect.poll(() => squiggles(page), { timeout: 30_000 }).toBeGreaterThan(0);
    await page.keyboard.press('Escape');
    console.log(await hoverOverSquiggle(page));
    await session.shot('look-hover');
    const link = page.locator('.monaco-hover:not(.hidden) a', { hasText: 'spacer-not-in-stock' }).first();
    console.log('links', await page.locator('.monaco-hover:not(.hidden) a').allInnerTexts());
    await link.click();
    await page.waitForTimeout(4000);
    await session.shot('look-page');
    await command(page, 'Dryfit: Explain a Check');
    await page.waitForTimeout(1500);
    await session.shot('look-pick');
    await page.keyboard.press('Enter');
    await page.waitForTimeout(3000);
    await session.shot('look-explained');
    await command(page, 'Preferences: Open Settings (UI)');
    await page.waitForTimeout(2000);
    await page.keyboard.type('@ext:dryfit.dryfit');
    await page.waitForTimeout(3000);
    await session.shot('look-settings');
    await command(page, 'Welcome: Open Walkthrough...');
    await page.waitForTimeout(1500);
    await page.locator('.quick-input-widget input').fill('From text');
    await page.waitForTimeout(800);
    await session.shot('look-walk-pick');
    await page.keyboard.press('Enter');
    await page.waitForTimeout(3000);
    await session.shot('look-walkthrough');
  }, 200_000);
});
