import type { FrameLocator } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { clipboard, cursor, focusText, lineOf } from './editor.js';
import { command } from './quick-input.js';
import { reload } from './reload.js';
import { inWorkbench } from './session.js';
import { webview } from './webview.js';

describe('the slot table', () => {
  const session = inWorkbench('node', 'bookcase.joinery');
  let table: FrameLocator;
  const column = (heading: string) =>
    table.locator('table').evaluate((found: HTMLTableElement, wanted) => {
      const head = [...(found.tHead?.rows[0]?.cells ?? [])].findIndex((cell) => cell.innerText.startsWith(wanted));
      return [...(found.tBodies[0]?.rows ?? [])].map((row) => row.cells[head]?.innerText ?? '');
    }, heading);

  beforeAll(async () => {
    await focusText(session.page);
    await command(session.page, 'Dryfit: Open Slot Table');
    table = await webview(session.page, 'Copy as CSV');
    await table.locator('table tbody tr').first().waitFor();
  });

  test('lists both halves of every joint and sorts by any column', async () => {
    await session.shot('slots-1');
    await expect.poll(() => column('Part')).toContain('divider');
    await table.getByRole('button', { name: /^From reference/ }).click();
    await table.locator('th[aria-sort="ascending"]', { hasText: 'From reference' }).waitFor();
    const rising = (await column('From reference')).map(Number);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    await table.getByRole('button', { name: /^From reference/ }).click();
    await table.locator('th[aria-sort="descending"]', { hasText: 'From reference' }).waitFor();
    const falling = (await column('From reference')).map(Number);
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    expect(falling).not.toEqual(rising);
  });

  test('is copied as CSV and as Markdown', async () => {
    const rows = await table.locator('table tbody tr').count();
    await table.getByRole('button', { name: 'Copy as CSV' }).click();
    await table.locator('.told', { hasText: 'CSV' }).waitFor();
    const csv = await clipboard(session.page);
    expect(csv).toMatch(/^(\uFEFF)?"?(Cabinet|Part)\b.*From datum/m);
    expect(
      csv
        .trim()
        .split(/\r?\n/)
        .filter((line) => line.includes('biscuit20')).length,
    ).toBe(rows);
    await table.getByRole('button', { name: 'Copy as Markdown' }).click();
    await table.locator('.told', { hasText: 'Markdown' }).waitFor();
    const markdown = await clipboard(session.page);
    expect(markdown.split('\n').filter((line) => line.startsWith('|') && line.includes('biscuit20')).length).toBe(rows);
  });

  test('a row leads to its joint', async () => {
    const row = table.locator('table tbody tr', { hasText: 'lshelf' }).first();
    await row.locator('button').first().click();
    const lines = ['butt lshelf', 'butt top', 'butt base', 'butt divider', 'butt rshelf'].map((words) =>
      lineOf(session.folder, 'bookcase.joinery', words),
    );
    await expect.poll(async () => lines.includes((await cursor(session.page)).line)).toBe(true);
    await session.shot('slots-2-row');
  });

  test('keeps how it is sorted and filtered when the window is reloaded', async () => {
    await table.getByRole('combobox', { name: 'Part' }).selectOption('divider');
    await table.getByRole('button', { name: /^From datum/ }).click();
    await table.locator('th[aria-sort="ascending"]', { hasText: 'From datum' }).waitFor();
    const before = await column('From datum');
    expect(before.length).toBeGreaterThan(2);
    await reload(session.page, '"part":"divider"', '"by":"From datum');
    table = await webview(session.page, 'Copy as CSV');
    await expect.poll(() => column('From datum')).toEqual(before);
    expect(await table.locator('th[aria-sort="ascending"], th[aria-sort="descending"]').count()).toBe(1);
    expect(await table.getByRole('combobox', { name: 'Part' }).inputValue()).toBe('divider');
  });
});
