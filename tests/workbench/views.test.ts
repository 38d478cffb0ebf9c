import { describe, expect, test } from 'vitest';
import { clipboard, command, cursor, goTo, replaceText, webview } from './editor.js';
import { inWorkbench } from './session.js';

describe.each(['node', 'browser'] as const)('beside the text in %s', (host) => {
  const session = inWorkbench(host, 'periodicals.joinery');

  test('a shape of the drawing leads to its text, and the cursor lights it up', async () => {
    const { page } = session;
    await command(page, 'Dryfit: Open Drawing Beside');
    const drawing = await webview(page, 'Mouse and keys');
    await drawing.locator('[data-shape="part shelf"]').first().waitFor();
    await session.shot('drawing-open');
    await goTo(page, 15);
    await drawing.getByRole('button', { name: 'Nearer' }).click();
    const seen = () => drawing.locator('svg').first().getAttribute('viewBox');
    const near = await seen();
    await drawing.locator('[data-shape="part shelf"] > polygon.across-z').first().click({ force: true });
    await expect.poll(() => cursor(page)).toEqual({ line: 12, column: 8 });
    await expect
      .poll(() => drawing.locator('[data-shape="part shelf"]').first().getAttribute('class'))
      .toMatch(/chosen/);
    await expect
      .poll(() => drawing.locator('[data-shape="part shelf"]').first().getAttribute('class'))
      .toMatch(/given/);
    await session.shot('drawing-chosen');
    await replaceText(page, 'bottom 350 above base.bottom', 'bottom 350 ab');
    await expect
      .poll(() => drawing.locator('.standing').allInnerTexts())
      .toEqual(['The text is broken; drawn from the last text that was whole.']);
    expect(await seen()).toBe(near);
    await session.shot('drawing-broken');
    await replaceText(page, 'bottom 350 ab', 'bottom 340 above base.bottom');
    await expect.poll(() => drawing.locator('.standing').count()).toBe(0);
    expect(await seen()).toBe(near);
  });

  test('the slot table is sorted, leads to the text, and is copied', async () => {
    const { page } = session;
    await session.show('periodicals.joinery');
    await command(page, 'Dryfit: Open Slot Table');
    const table = await webview(page, 'Copy as CSV');
    await table.getByRole('button', { name: /^From reference/ }).click();
    expect(await table.locator('th[aria-sort="ascending"]').innerText()).toMatch(/From reference/);
    await session.shot('slots');
    await table.getByRole('button', { name: 'Copy as CSV' }).click();
    await expect.poll(() => table.locator('.told').innerText()).toMatch(/rows copied as CSV/);
    expect(await clipboard(page)).toMatch(/^Cabinet,Part,Pieces,/);
    await table.locator('tbody tr').first().click();
    await expect.poll(() => table.locator('tbody tr.lit').count()).toBeGreaterThan(0);
  });
});
