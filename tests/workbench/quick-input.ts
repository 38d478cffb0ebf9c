import { basename } from 'node:path';
import type { Page } from 'playwright-core';
import { editorOf } from './editor.js';
import { SOON, until } from './until.js';

const inputOf = (page: Page) => page.locator('.quick-input-widget input');
const rowOf = (page: Page, words: string) =>
  page.locator('.quick-input-list .monaco-list-row', { hasText: words }).first();

/** Runs a command of the palette by its title. */
export async function command(page: Page, title: string): Promise<void> {
  await choose(page, 'F1', `>${title}`, title);
}

/** Runs a command that lets choose from a list, and takes of that list the first row that has the words. */
export async function commandOf(page: Page, title: string, words: string): Promise<void> {
  await until(
    async () => {
      await command(page, title);
      await inputOf(page).fill(words, SOON);
      await take(page, words);
    },
    { between: () => page.keyboard.press('Escape') },
  );
}

/** Opens a file by its full path, beside those that are open; the workbench under test cannot search for names. */
export async function openBeside(page: Page, path: string): Promise<void> {
  const file = basename(path);
  await choose(page, 'Control+P', path, file);
  await page.locator(`.tab.active[data-resource-name="${file}"]`).waitFor();
  // The tab comes before the text: until then the lines of the last one stand there.
  await editorOf(page, file).locator('.view-line').first().waitFor();
}

/**
 * Opens the workbench's input by a key, asks it for something and takes the first row that has the words. A panel that
 * comes to the front takes the keyboard a moment later, which closes the input; and a command of an extension is listed
 * once the extension is known. So it is asked until it answers.
 */
async function choose(page: Page, key: string, asked: string, words: string): Promise<void> {
  await until(
    async () => {
      await page.keyboard.press(key);
      await inputOf(page).fill(asked, SOON);
      await take(page, words);
    },
    { between: () => page.keyboard.press('Escape') },
  );
}

/** Takes a row of the list that is open. It is taken once it has gone: the list closes, or another stands there. */
export async function take(page: Page, words: string): Promise<void> {
  const row = rowOf(page, words);
  await row.waitFor(SOON);
  await row.click(SOON);
  await row.waitFor({ state: 'hidden', ...SOON });
}
