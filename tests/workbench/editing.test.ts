import { describe, expect, test } from 'vitest';
import { fileText, putCursor, replaceText, save, squiggles, visibleLines } from './editor.js';
import { command } from './quick-input.js';
import { inWorkbench } from './session.js';
import { SOON, until } from './until.js';

describe('editing', () => {
  const session = inWorkbench('node', 'periodicals.joinery');

  test('a pattern is renamed in the shop and in every file that connects by it', async () => {
    const { page } = session;
    await session.show('shop.joinery');
    await putCursor(page, 'deep5');
    const box = page.locator('.rename-box input');
    // Until the server has started the key does nothing.
    await until(async () => {
      await page.keyboard.press('F2');
      await box.waitFor(SOON);
      await box.fill('deepfive', SOON);
      await page.keyboard.press('Enter');
      await box.waitFor({ state: 'hidden', ...SOON });
    });
    await command(page, 'File: Save All Files');
    for (const file of ['shop.joinery', 'periodicals.joinery', 'display-plinth.joinery'])
      await expect.poll(() => fileText(session.folder, file)).toMatch(/\bdeepfive\b/);
    for (const file of ['shop.joinery', 'periodicals.joinery', 'display-plinth.joinery'])
      expect(fileText(session.folder, file)).not.toMatch(/\bdeep5\b/);
    await session.show('periodicals.joinery');
    await expect.poll(() => squiggles(page)).toBe(0);
  });

  test('formatting puts a line in order and leaves a comment alone', async () => {
    const { page } = session;
    await session.show('periodicals.joinery');
    await replaceText(page, '    rear set back 16 from lh', '  rear   set back 16 from   lh // the back');
    await command(page, 'Format Document');
    const line = async () => (await visibleLines(page)).find((text) => text.includes('// the back'));
    await expect.poll(line).toBe('    rear set back 16 from lh  // the back');
    await save(page);
    await expect
      .poll(() => fileText(session.folder, 'periodicals.joinery'))
      .toContain('    rear set back 16 from lh  // the back\n');
  });

  test('completion offers a side that fits and leaves out one that does not', async () => {
    const { page } = session;
    await session.show('periodicals.joinery');
    await replaceText(page, '    rear against back.groove.front', '    rear against back.groove.');
    const list = page.locator('.suggest-widget.visible .monaco-list-row');
    const names = async () => (await list.allInnerTexts()).map((text) => text.trim().split(/\s/)[0]);
    // The editor asks by itself after the full stop, before the server has read that far.
    await until(
      async () => {
        await page.keyboard.press('Control+Space');
        await expect.poll(names, SOON).toContain('front');
      },
      { between: () => page.keyboard.press('Escape') },
    );
    const offered = await names();
    await session.shot('editing-completion');
    // The shelf's rear can only lie against a plane that looks to the front or the rear.
    expect(offered).not.toContain('left');
    await page.keyboard.press('Escape');
    await page.keyboard.insertText('front');
    await expect.poll(() => squiggles(page)).toBe(0);
  });

  test('the outline lists parts and joints', async () => {
    const { page } = session;
    await session.show('periodicals.joinery');
    const list = page.locator('.quick-input-list .monaco-list-row');
    const names = async () => (await list.allInnerTexts()).join('\n');
    await until(
      async () => {
        await page.keyboard.press('Control+Shift+O');
        await expect.poll(names, SOON).toContain('Periodicals');
      },
      { between: () => page.keyboard.press('Escape') },
    );
    await session.shot('editing-outline');
    expect(await names()).toContain('shelf');
    expect(await names()).toMatch(/butt shelf/);
    await page.keyboard.press('Escape');
  });
});
