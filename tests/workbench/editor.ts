import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { FrameLocator, Page } from 'playwright-core';

/** Scrolls to a line (from 1) and puts the cursor at a column (from 1). */
export async function goTo(page: Page, line: number, column = 1): Promise<void> {
  await focusText(page);
  await page.keyboard.press('Control+G');
  await page.locator('.quick-input-widget input').fill(`:${line}:${column}`);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

/** Types `text` over the first place where `found` stands; both on one line. */
export async function replaceText(page: Page, found: string, text: string): Promise<void> {
  await selectText(page, found);
  await page.keyboard.insertText(text);
}

/** Selects the first place where `found` stands. */
export async function selectText(page: Page, found: string): Promise<void> {
  await focusText(page);
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Control+F');
  const search = page.locator('.find-widget.visible textarea[aria-label="Find"]');
  // What was searched for before is not searched for again.
  await search.fill('');
  await search.fill(found);
  await page.locator('.find-widget.visible .matchesCount', { hasText: /^[1-9]\d* of / }).waitFor();
  // Closing the search leaves its match selected.
  await page.keyboard.press('Escape');
  await page.locator('.find-widget.visible').waitFor({ state: 'detached' });
}

/** How many underlines of errors and warnings are drawn. */
export function squiggles(page: Page): Promise<number> {
  return page.locator('.editor-instance .squiggly-error, .editor-instance .squiggly-warning').count();
}

/** Text of the hover over the first place where `word` stands in the line that contains `context`. */
export async function hoverOver(page: Page, context: string, word: string): Promise<string> {
  return hoverAt(page, async () => {
    const place = await page.locator('.editor-instance .view-lines').evaluate(placeOf, { context, word });
    if (place === undefined) throw new Error(`no line with "${context}" and "${word}" is visible`);
    return place;
  });
}

/** Text of the hover over the first error or warning underline. */
export async function hoverOverSquiggle(page: Page): Promise<string> {
  const squiggle = page.locator('.editor-instance .squiggly-error, .editor-instance .squiggly-warning').first();
  await squiggle.waitFor({ state: 'attached' });
  return hoverAt(page, async () => {
    const box = await squiggle.boundingBox();
    if (box === null) throw new Error('the underline is not visible');
    return { x: box.x + Math.min(6, box.width / 2), y: box.y + box.height / 2 };
  });
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
  for (let attempt = 1; ; attempt++) {
    const line = page.locator('.editor-instance .view-lines .view-line').first();
    await line.waitFor();
    const box = await line.boundingBox();
    if (box !== null) return page.mouse.click(box.x + 2, box.y + box.height / 2);
    if (attempt === 50) throw new Error('the editor shows no line');
    await page.waitForTimeout(100);
  }
}

/** Runs a command of the palette by its title. */
export async function command(page: Page, title: string): Promise<void> {
  await choose(page, 'F1', `>${title}`, title);
}

/**
 * Opens the workbench's input by a key, asks it for something and takes the first row that has the words. A panel that
 * comes to the front takes the keyboard a moment later, which closes the input; and a command of an extension is listed
 * once the extension is known. So it is asked until it answers.
 */
async function choose(page: Page, key: string, asked: string, words: string): Promise<void> {
  const input = page.locator('.quick-input-widget input');
  const row = page.locator('.quick-input-list .monaco-list-row', { hasText: words }).first();
  for (let attempt = 1; ; attempt++) {
    await page.keyboard.press(key);
    try {
      await input.fill(asked, { timeout: 4_000 });
      await row.waitFor({ timeout: 6_000 });
      return await row.click({ timeout: 4_000 });
    } catch (error) {
      if (attempt === 8) throw error;
      await page.keyboard.press('Escape');
    }
  }
}

/** Loads the window anew, with the editors that were open in it. */
export async function reload(page: Page): Promise<void> {
  // An editor in a browser writes its state down every five seconds, when it has nothing else to do.
  await page.waitForTimeout(8_000);
  // An address that asks for a file opens that file and no other.
  const address = new URL(page.url());
  address.searchParams.delete('payload');
  await page.goto(`${address}`);
  await page.locator('.monaco-workbench .tab').first().waitFor();
}

/** Opens a file by its full path, beside those that are open; the workbench under test cannot search for names. */
export async function openBeside(page: Page, path: string): Promise<void> {
  const file = basename(path);
  await choose(page, 'Control+P', path, file);
  await page.locator(`.tab.active[data-resource-name="${file}"]`).waitFor();
  await page.locator('.editor-instance .view-lines .view-line').first().waitFor();
}

/** Saves the file that is open. */
export async function save(page: Page): Promise<void> {
  await page.keyboard.press('Control+S');
  await page.locator('.editor-group-container.active .tab.active:not(.dirty)').waitFor();
}

/** Text of a file as it lies on the disk. */
export function fileText(folder: string, file: string): string {
  return readFileSync(join(folder, file), 'utf8');
}

/** Puts the cursor at the first place where `word` stands; both on one line. */
export async function putCursor(page: Page, word: string): Promise<void> {
  await selectText(page, word);
  await page.keyboard.press('ArrowLeft');
}

/** Where the cursor is, as the status bar says: line and column, from 1. */
export async function cursor(page: Page): Promise<{ line: number; column: number }> {
  const text = (await page.locator('#status\\.editor\\.selection a').textContent()) ?? '';
  const found = /Ln (\d+), Col (\d+)/.exec(text);
  if (!found) throw new Error(`the status bar says "${text}"`);
  return { line: Number(found[1]), column: Number(found[2]) };
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

/** Opens the menu of quick fixes at the cursor and takes the first whose title matches. */
export async function quickFix(page: Page, title: RegExp, shown?: () => Promise<void>): Promise<string> {
  const menu = page.locator('.action-widget');
  const row = menu.locator('.monaco-list-row.action', { hasText: title }).first();
  // A quarter of a second after the cursor has come somewhere the editor asks by itself, for its light bulb, and drops
  // the question for a menu that is not answered by then: a hasty hand presses again.
  for (let attempt = 1; ; attempt++) {
    await page.keyboard.press('Control+.');
    try {
      await row.waitFor({ timeout: 6_000 });
      break;
    } catch (error) {
      if (attempt === 5) throw error;
      await page.keyboard.press('Escape');
    }
  }
  await shown?.();
  const titles = await menu.locator('.monaco-list-row.action').allInnerTexts();
  const index = titles.findIndex((text) => title.test(text));
  // The first row is chosen when the menu opens; the mouse would have to wait for rows that are drawn again.
  for (let i = 0; i < index; i++) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await menu.waitFor({ state: 'hidden' });
  return (titles[index] ?? '').trim();
}

/** The document of a webview whose inner text matches. */
export async function webview(page: Page, holds: string): Promise<FrameLocator> {
  const frames = page.locator('iframe.webview.ready');
  await frames.first().waitFor();
  const seen = new Set<string>();
  for (const end = Date.now() + 50_000; Date.now() < end; await page.waitForTimeout(200)) {
    for (let i = 0; i < (await frames.count()); i++) {
      const frame = frames.nth(i).contentFrame().locator('#active-frame').contentFrame();
      const text = await frame
        .locator('body')
        .innerText({ timeout: 500 })
        .catch(() => '');
      if (text.includes(holds)) return frame;
      seen.add(text.slice(0, 200));
    }
  }
  throw new Error(`no webview holds "${holds}"; they held ${JSON.stringify([...seen])}`);
}

/** What the clipboard holds. */
export function clipboard(page: Page): Promise<string> {
  return page.evaluate(() => navigator.clipboard.readText());
}

/** The place is asked for anew at each attempt: lines move when lenses and hints come in. */
async function hoverAt(page: Page, where: () => Promise<{ x: number; y: number }>): Promise<string> {
  const hover = page.locator('.monaco-hover:not(.hidden)').first();
  // Until the server has started there is nothing to show, and the workbench does not ask again by itself.
  for (let attempt = 1; ; attempt++) {
    // A hover that is still open would be read instead of the wanted one.
    await page.keyboard.press('Escape');
    await page.mouse.move(2, 2);
    await hover.waitFor({ state: 'hidden' });
    await page.waitForTimeout(300);
    const { x, y } = await where();
    await page.mouse.move(x, y, { steps: 3 });
    try {
      await hover.waitFor({ state: 'visible', timeout: 3_000 });
      break;
    } catch (error) {
      if (attempt === 10) throw error;
    }
  }
  // "Loading..." stands there until the server has answered.
  await page.waitForFunction(() => {
    const shown = document.querySelector('.monaco-hover:not(.hidden)')?.textContent ?? '';
    return shown !== '' && !/^Loading/.test(shown.trim());
  });
  return (await hover.innerText()).trim();
}

/** Runs in the page: the middle of a word on the screen. */
function placeOf(lines: Element, wanted: { context: string; word: string }): { x: number; y: number } | undefined {
  for (const line of lines.querySelectorAll('.view-line')) {
    const text = (line.textContent ?? '').replaceAll('\u00a0', ' ');
    const at = text.indexOf(wanted.context);
    const start = at < 0 ? -1 : text.indexOf(wanted.word, at);
    if (start < 0) continue;
    const range = document.createRange();
    const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
    const middle = start + Math.floor(wanted.word.length / 2);
    let seen = 0;
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const length = node.textContent?.length ?? 0;
      if (seen + length > middle) {
        range.setStart(node, middle - seen);
        range.setEnd(node, middle - seen + 1);
        const box = range.getBoundingClientRect();
        return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      }
      seen += length;
    }
  }
  return undefined;
}
