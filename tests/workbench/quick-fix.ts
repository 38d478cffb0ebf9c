import type { Page } from 'playwright-core';
import { come, SOON, until } from './until.js';

const menuOf = (page: Page) => page.locator('.action-widget');

/** The bulb beside the line of the cursor: the editor has asked by itself, and something can be done. */
export const bulb = (page: Page) =>
  page.locator('.editor-instance .lightBulbWidget, .editor-instance [class*="codicon-gutter-lightbulb"]');

/** Opens the menu of quick fixes at the cursor and takes the first whose title matches. */
export async function quickFix(page: Page, title: RegExp, shown?: () => Promise<void>): Promise<string> {
  // A quarter of a second after the cursor has come somewhere the editor asks by itself, for its light bulb, and drops
  // the question for a menu that is not answered by then: a hasty hand presses again.
  await until(() => openFixes(page, title), { between: () => page.keyboard.press('Escape') });
  await shown?.();
  return takeFix(page, title);
}

/** Presses the key for the menu of quick fixes, once; fails where none comes that has such a fix. */
export async function openFixes(page: Page, title: RegExp): Promise<void> {
  await page.keyboard.press('Control+.');
  await menuOf(page).locator('.monaco-list-row.action', { hasText: title }).first().waitFor(SOON);
}

/** Takes the first fix of the open menu whose title matches. */
export async function takeFix(page: Page, title: RegExp): Promise<string> {
  const menu = menuOf(page);
  // The first row is chosen when the menu opens; the mouse would have to wait for rows that are drawn again.
  const focused = menu.locator('.monaco-list-row.action.focused');
  const rows = await menu.locator('.monaco-list-row.action').count();
  for (let row = 0; row < rows; row++) {
    const told = (await focused.innerText()).trim();
    if (title.test(told)) {
      await page.keyboard.press('Enter');
      await menu.waitFor({ state: 'hidden' });
      return told;
    }
    if (row === rows - 1) break;
    const before = await focused.getAttribute('data-index');
    await page.keyboard.press('ArrowDown');
    // What is read next is the row that the key has gone to.
    await come(
      () => focused.getAttribute('data-index'),
      (index) => index !== before,
    );
  }
  throw new Error(`no fix of the menu matches ${title}`);
}
