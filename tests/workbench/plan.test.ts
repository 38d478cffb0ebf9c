import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { cursor, focusText, lineOf, putCursor, replaceText } from './editor.js';
import { faults } from './faults.js';
import { notification } from './notification.js';
import { command } from './quick-input.js';
import { reload } from './reload.js';
import { inWorkbench, type Session } from './session.js';
import { inTerminal, readable } from './terminal.js';
import { webview } from './webview.js';

const patient = { timeout: 60_000 };
const HOLDS = 'Print Sheets…';

async function opened({ page }: Session): Promise<FrameLocator> {
  await focusText(page);
  await command(page, 'Dryfit: Open Plan Beside');
  const plan = await webview(page, HOLDS);
  await plan.locator('.set-up').first().waitFor();
  return plan;
}

describe('the plan beside the text', () => {
  const session = inWorkbench('node', 'periodicals.joinery', { user: readable });
  let plan: FrameLocator;
  const text = (of: string) => plan.locator(of).allInnerTexts();

  beforeAll(async () => {
    plan = await opened(session);
  });

  test('shows the set-ups in their order, with what is set and what is milled', async () => {
    await session.shot('plan-1');
    expect(await plan.locator('h1').innerText()).toBe('Plan of job Library');
    expect((await text('.totals')).join()).toContain('no choice of settings and no order takes less');
    const setUps = await plan.locator('.set-up').count();
    expect(setUps).toBeGreaterThan(2);
    // Every set-up mills something, and before the first one everything is set.
    for (let i = 0; i < setUps; i++)
      expect(await plan.locator('.set-up').nth(i).locator('tbody tr').count()).toBeGreaterThan(0);
    expect(await plan.locator('.set-up').first().locator('.settings .anew').count()).toBeGreaterThan(5);
    expect((await text('.changes')).join()).toContain('No set-up has changed');
  });

  test('a part leads to its joint, a machine to the shop, the job to its line', async () => {
    const { page, folder } = session;
    const row = plan.locator('.set-up tbody tr', { hasText: 'shelf' }).first();
    await row.getByRole('button').click();
    const joint = lineOf(folder, 'periodicals.joinery', 'butt shelf');
    await expect.poll(async () => (await cursor(page)).line, patient).toBe(joint);
    await plan.getByRole('button', { name: 'job Library' }).click();
    await expect
      .poll(async () => (await cursor(page)).line, patient)
      .toBe(lineOf(folder, 'periodicals.joinery', 'job Library'));
    await plan
      .getByRole('button', { name: /^machine / })
      .first()
      .click();
    await page.locator('.tab.active[data-resource-name="shop.joinery"]').waitFor();
    await expect.poll(async () => (await cursor(page)).line, patient).toBe(lineOf(folder, 'shop.joinery', 'machine '));
    await session.shot('plan-2-shop');
    await page.locator('.tab[data-resource-name="periodicals.joinery"]').click();
  });

  test('the cursor in a joint lights the rows that are milled for it', async () => {
    const { page } = session;
    await putCursor(page, 'butt shelf');
    // Of both sizes of the cabinet: either end of the shelf, and the face of either side that it comes to.
    const rows = (part: RegExp) => async () => (await text('tr.lit')).filter((row) => part.test(row)).length;
    await expect.poll(rows(/\bshelf\b/), patient).toBe(4);
    await expect.poll(rows(/\blh\b/), patient).toBe(2);
    await expect.poll(rows(/\brh\b/), patient).toBe(2);
    expect(await plan.locator('tr.lit').count()).toBe(8);
    await session.shot('plan-3-lit');
    await putCursor(page, 'job Library');
    await expect.poll(() => plan.locator('tr.lit').count(), patient).toBe(0);
  });

  test('an edit of a stop marks the set-ups it touches, and says from what to what', async () => {
    const { page } = session;
    await replaceText(page, 'bottom 350 above', 'bottom 340 above');
    await expect.poll(async () => (await text('.changes')).join(), patient).toMatch(/set-ups? touched since \d\d:\d\d/);
    await expect
      .poll(async () => (await text('.set-up.changed .differs')).join(), patient)
      .toMatch(/stop [\d.]+ → [\d.]+/);
    await session.shot('plan-4-stop');
    expect(await faults(plan)).toEqual([]);
  });

  test('an edit of a spacer marks those as well, until the plan is taken to compare with', async () => {
    const { page } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 14 from');
    await expect.poll(async () => (await text('.changes')).join(), patient).toMatch(/spacer 12 \+ 10 = 22 → /);
    await session.shot('plan-5-spacer');
    await plan.getByRole('button', { name: 'Compare from now on' }).click();
    await expect.poll(async () => (await text('.changes')).join(), patient).toContain('No set-up has changed');
    expect(await plan.locator('.set-up.changed, .set-up.new').count()).toBe(0);
    await replaceText(page, 'rear set back 14 from', 'rear set back 16 from');
    await expect.poll(async () => (await text('.changes')).join(), patient).toMatch(/spacer .* → 12 \+ 10 = 22/);
  });

  test('while the text is broken the last good plan stays, and says so', async () => {
    const { page } = session;
    const before = await plan.locator('.set-up').count();
    await replaceText(page, 'flush front', 'flush =');
    await expect
      .poll(async () => (await text('.standing')).join(), patient)
      .toContain('planned from the last text that was whole');
    expect(await plan.locator('.set-up').count()).toBe(before);
    await session.shot('plan-6-broken');
    await replaceText(page, 'flush =', 'flush front');
    await expect.poll(() => plan.locator('.standing').count(), patient).toBe(0);
  });

  test('with an error it says that nothing is to be milled', async () => {
    const { page } = session;
    await replaceText(page, 'rear set back 16 from', 'rear set back 15 from');
    await expect
      .poll(async () => (await text('.warning')).join(), patient)
      .toContain('do not cut or mill from this plan');
    await session.shot('plan-7-error');
    await replaceText(page, 'rear set back 15 from', 'rear set back 16 from');
    await expect.poll(() => plan.locator('.warning').count(), patient).toBe(0);
  });

  test('its sheets are written from what stands in the editor', async () => {
    const { page, folder } = session;
    const print = () => plan.getByRole('button', { name: HOLDS }).click();
    const written = await inTerminal(page, print, /wrote \d+ pages to tables/);
    expect(written).toContain('> dryfit sheets periodicals.joinery Library --out tables');
    const told = await notification(page, 'the sheets of job Library are in');
    const [, path = ''] = /are in (\S+)/.exec(await told.innerText()) ?? [];
    const html = readFileSync(join(folder, path), 'utf8');
    // The height that was typed, and saved by printing.
    expect(html).toContain('>340<');
    expect(html).not.toContain('>350<');
    expect(existsSync(join(folder, path.replace('.html', '.pdf')))).toBe(true);
    await session.shot('plan-8-printed');
  });

  test('one set-up is printed alone, by keys', async () => {
    const { page, folder } = session;
    const print = async () => {
      await plan.getByRole('button', { name: 'Print Set-up 2…' }).focus();
      await page.keyboard.press('Enter');
    };
    await inTerminal(page, print, /> dryfit sheets periodicals\.joinery Library --out tables --set-up 2/);
    const told = await notification(page, 'set-up 2 of job Library is in');
    const [, path = ''] = /is in (\S+)/.exec(await told.innerText()) ?? [];
    const html = readFileSync(join(folder, path), 'utf8');
    const titles = [...html.matchAll(/<title>job Library, (Set-up \d+ of \d+)/g)].map(([, title]) => title);
    expect(titles.length).toBeGreaterThan(0);
    expect(new Set(titles)).toEqual(new Set([expect.stringMatching(/^Set-up 2 of /)]));
    expect(existsSync(join(folder, path.replace('.html', '.pdf')))).toBe(true);
    await session.shot('plan-9-one-set-up');
  });

  test('comes back after a reload of the window, with what it is compared with', async () => {
    const { page } = session;
    const before = (await text('.changes')).join();
    expect(before).toContain('touched');
    await reload(page, '"bases"');
    plan = await webview(page, HOLDS);
    await expect.poll(async () => (await text('.changes')).join(), patient).toBe(before);
  });
});

describe('the plan in a browser', () => {
  const session = inWorkbench('browser', 'periodicals.joinery');

  test('is worked out, and its sheets are refused with the reason', async () => {
    const plan = await opened(session);
    expect((await plan.locator('.totals').allInnerTexts()).join()).toContain(
      'no choice of settings and no order takes less',
    );
    await plan.getByRole('button', { name: HOLDS }).click();
    const told = await notification(session.page, 'no sheets were printed');
    expect(await told.innerText()).toContain('runs in a browser');
    await session.shot('plan-in-browser');
    // Nor those of one set-up.
    await command(session.page, 'Notifications: Clear All Notifications');
    await plan.getByRole('button', { name: 'Print Set-up 1…' }).click();
    expect(await (await notification(session.page, 'no sheets were printed')).innerText()).toContain(
      'runs in a browser',
    );
  });
});

describe.each(['Default Light Modern', 'Default Dark Modern', 'Default High Contrast', 'Default High Contrast Light'])(
  'the plan in %s',
  (theme) => {
    const session = inWorkbench('node', 'periodicals.joinery', { folder: { 'workbench.colorTheme': theme } });

    test('has no serious fault', async () => {
      const plan = await opened(session);
      await replaceText(session.page, 'bottom 350 above', 'bottom 340 above');
      await plan.locator('.set-up.changed').first().waitFor();
      await putCursor(session.page, 'butt shelf');
      await plan.locator('tr.lit').first().waitFor();
      await plan.locator(`body[data-vscode-theme-id="${theme}"]`).waitFor();
      await session.shot(`plan-${theme.replaceAll(' ', '-')}`);
      expect(await faults(plan)).toEqual([]);
    });
  },
);
