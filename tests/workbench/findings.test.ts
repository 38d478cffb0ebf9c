import { describe, expect, test } from 'vitest';
import { focusText, problems, putCursor, replaceText, squiggles, visibleLines } from './editor.js';
import { bulb, openFixes, quickFix, takeFix } from './quick-fix.js';
import { commandOf } from './quick-input.js';
import { inWorkbench } from './session.js';
import { webview } from './webview.js';
import type { Host } from './workbench.js';

describe.each<Host>(['node', 'browser'])('findings and their fixes, running in %s', (host) => {
  const session = inWorkbench(host, 'periodicals.joinery');

  test('a slot too near to an edge is cured by a quick fix', async () => {
    const { page } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 22 from');
    await expect.poll(() => squiggles(page), { timeout: 60_000 }).toBeGreaterThan(0);
    await putCursor(page, 'butt shelf');
    const title = await quickFix(page, /leave out 70/, () => session.shot('fix-1-offered'));
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
    await session.shot('fix-2-cured');
    await expect.poll(async () => (await visibleLines(page)).join('\n'), { message: title }).toMatch(/leave out/);
    await focusText(page);
    await page.keyboard.press('Control+Z');
    await replaceText(page, 'rear set back 22 from', 'rear set back 16 from');
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
  });

  test('where the light bulb shows, the fixes come by one press of the key', async () => {
    const { page } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 22 from');
    await expect.poll(() => squiggles(page), { timeout: 60_000 }).toBeGreaterThan(0);
    await putCursor(page, 'butt shelf');
    await bulb(page).first().waitFor();
    await openFixes(page, /leave out 70/);
    await session.shot('fix-0-bulb');
    await takeFix(page, /leave out 70/);
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
    await focusText(page);
    await page.keyboard.press('Control+Z');
    await replaceText(page, 'rear set back 22 from', 'rear set back 16 from');
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
  });

  test('a finding can be allowed with a reason', async () => {
    const { page } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 22 from');
    await expect.poll(() => squiggles(page), { timeout: 60_000 }).toBeGreaterThan(0);
    await putCursor(page, 'butt shelf');
    await quickFix(page, /allow/i);
    await expect.poll(async () => (await visibleLines(page)).join('\n')).toMatch(/allow slot-near-edge "/);
    await session.shot('fix-3-allowed');
    await focusText(page);
    await page.keyboard.press('Control+Z');
    await replaceText(page, 'rear set back 22 from', 'rear set back 16 from');
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
  });

  test('a name misspelt is put right', async () => {
    const { page } = session;
    await replaceText(page, 'rear against back.groove', 'rear against bakc.groove');
    await expect.poll(() => squiggles(page), { timeout: 60_000 }).toBeGreaterThan(0);
    await putCursor(page, 'bakc');
    await quickFix(page, /back/);
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
  });

  test('the page of a check is read without a network', async () => {
    const { page } = session;
    await commandOf(page, 'Dryfit: Explain a Check', 'slot-near-edge');
    await page.locator('.tab.active', { hasText: /slot-near-edge/ }).waitFor();
    const shown = await webview(page, 'This fails:');
    expect(await shown.locator('h1').innerText()).toBe('slot-near-edge');
    await session.shot('fix-4-page');
  });
});
