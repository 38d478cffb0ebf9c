import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { come, SOON, until } from './until.js';

/** The editor that shows a file, by its name. */
export function editorOf(page: Page, file: string): Locator {
  return page.locator(`.editor-instance .monaco-editor[data-uri$="/${file}"]`);
}

/** Scrolls to a line (from 1) and puts the cursor at a column (from 1). */
export async function goTo(page: Page, line: number, column = 1): Promise<void> {
  await until(
    async () => {
      await focusText(page);
      await page.keyboard.press('Control+G');
      await page.locator('.quick-input-widget input').fill(`:${line}:${column}`, SOON);
      await page.keyboard.press('Enter');
      await page.locator('.quick-input-widget').waitFor({ state: 'hidden', ...SOON });
      await standsAt(page, { line, column, selected: 0 });
    },
    { between: () => page.keyboard.press('Escape') },
  );
}

/** Types `text` over the first place where `found` stands; both on one line. What has been typed is found no more. */
export async function replaceText(page: Page, found: string, text: string): Promise<void> {
  await until(async () => {
    const { line, column } = await selectText(page, found);
    await page.keyboard.insertText(text);
    await standsAt(page, { line, column: column - found.length + text.length, selected: 0 });
  });
}

/** Selects the first place where `found` stands; where its end is. */
export async function selectText(page: Page, found: string): Promise<Cursor> {
  return until(
    async () => {
      await focusText(page);
      await page.keyboard.press('Control+Home');
      await page.keyboard.press('Control+F');
      const search = page.locator('.find-widget.visible textarea[aria-label="Find"]');
      // What was searched for before is not searched for again.
      await search.fill('', SOON);
      await search.fill(found, SOON);
      await page.locator('.find-widget.visible .matchesCount', { hasText: /^1 of / }).waitFor(SOON);
      // Closing the search leaves its match selected.
      await page.keyboard.press('Escape');
      await page.locator('.find-widget.visible').waitFor({ state: 'detached', ...SOON });
      await hasKeyboard(page);
      return come(
        () => cursor(page),
        ({ selected }) => selected === found.length,
      );
    },
    { between: () => page.keyboard.press('Escape') },
  );
}

/** How many underlines of errors and warnings are drawn. */
export function squiggles(page: Page): Promise<number> {
  return page.locator('.editor-instance .squiggly-error, .editor-instance .squiggly-warning').count();
}

/** Counts in the status bar, as the workbench words them ("No Problems", "Errors: 1, Warnings: 0"). */
export async function problems(page: Page): Promise<string> {
  return (await page.locator('#status\\.problems a').getAttribute('aria-label')) ?? '';
}

/** Line (from 1) of a file on the disk in which words stand. */
export function lineOf(folder: string, file: string, words: string): number {
  return (
    fileText(folder, file)
      .split('\n')
      .findIndex((line) => line.includes(words)) + 1
  );
}

/** Puts the keyboard into the editor without scrolling it, which a click on the middle of its wide text would do. */
export async function focusText(page: Page): Promise<void> {
  // Lines are drawn anew when a theme or lenses come in.
  await until(async () => {
    const line = page.locator('.editor-instance .view-lines .view-line').first();
    const box = await line.boundingBox(SOON);
    if (box === null) throw new Error('the editor shows no line');
    await page.mouse.click(box.x + 2, box.y + box.height / 2);
    await hasKeyboard(page);
  });
}

/** The keyboard writes into the editor. */
const hasKeyboard = (page: Page) => page.locator('.editor-instance .monaco-editor.focused').waitFor(SOON);

/** Saves the file that is open. */
export async function save(page: Page): Promise<void> {
  await until(async () => {
    await page.keyboard.press('Control+S');
    await page.locator('.editor-group-container.active .tab.active:not(.dirty)').waitFor(SOON);
  });
}

/** Text of a file as it lies on the disk. */
export function fileText(folder: string, file: string): string {
  return readFileSync(join(folder, file), 'utf8');
}

/** Puts the cursor at the first place where `word` stands; both on one line. */
export async function putCursor(page: Page, word: string): Promise<void> {
  await until(async () => {
    const { line, column } = await selectText(page, word);
    await page.keyboard.press('ArrowLeft');
    await standsAt(page, { line, column: column - word.length, selected: 0 });
  });
}

export interface Cursor {
  /** From 1. */
  readonly line: number;
  readonly column: number;
  /** How many characters before it are selected. */
  readonly selected: number;
}

/** Where the cursor is, as the status bar says. */
export async function cursor(page: Page): Promise<Cursor> {
  const text = (await page.locator('#status\\.editor\\.selection a').textContent(SOON)) ?? '';
  const [, line, column, selected] = /Ln (\d+), Col (\d+)(?: \((\d+) selected\))?/.exec(text) ?? [];
  if (!line) throw new Error(`the status bar says "${text}"`);
  return { line: Number(line), column: Number(column), selected: Number(selected ?? 0) };
}

/** What was done with a key shows in where the cursor is. */
async function standsAt(page: Page, place: Cursor): Promise<void> {
  await come(
    () => cursor(page),
    ({ line, column, selected }) => line === place.line && column === place.column && selected === place.selected,
  );
}

/** The lines of the editor that are on the screen, inlay hints among them. */
export async function visibleLines(page: Page): Promise<string[]> {
  const lines = await page.locator('.editor-instance .view-lines .view-line').evaluateAll((found) =>
    found
      .map((line) => ({ top: line.getBoundingClientRect().top, text: line.textContent ?? '' }))
      .sort((a, b) => a.top - b.top)
      .map(({ text }) => text.replaceAll('\u00a0', ' ')),
  );
  return lines;
}

/** What the clipboard holds. */
export function clipboard(page: Page): Promise<string> {
  return page.evaluate(() => navigator.clipboard.readText());
}
