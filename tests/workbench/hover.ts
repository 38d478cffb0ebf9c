import type { Locator, Page } from 'playwright-core';
import { SOON, until } from './until.js';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Text of the hover over the first place where `word` stands in the line that contains `context`. */
export async function hoverOver(page: Page, context: string, word: string): Promise<string> {
  return hoverAt(page, async () => {
    const place = await page.locator('.editor-instance .view-lines').evaluate(placeOf, { context, word }, SOON);
    if (place === undefined) throw new Error(`no line with "${context}" and "${word}" is visible`);
    return place;
  });
}

/** Text of the hover over the first error or warning underline. */
export async function hoverOverSquiggle(page: Page): Promise<string> {
  const squiggle = page.locator('.editor-instance .squiggly-error, .editor-instance .squiggly-warning').first();
  await squiggle.waitFor({ state: 'attached' });
  return hoverAt(page, async () => {
    const box = await squiggle.boundingBox(SOON);
    if (box === null) throw new Error('the underline is not visible');
    return { x: box.x + Math.min(6, box.width / 2), y: box.y + box.height / 2 };
  });
}

/**
 * Until the server has started there is nothing to show, and the workbench does not ask again by itself. The place is
 * asked for anew each time: lines move when lenses and hints come in, which also closes a hover that was open.
 */
async function hoverAt(page: Page, where: () => Promise<Point>): Promise<string> {
  const hover = page.locator('.monaco-hover:not(.hidden)').first();
  return until(async () => {
    // A hover that is still open would be read instead of the wanted one.
    await page.keyboard.press('Escape');
    await page.mouse.move(2, 2);
    await hover.waitFor({ state: 'hidden', ...SOON });
    const place = await where();
    await page.mouse.move(place.x, place.y, { steps: 3 });
    await hover.waitFor({ state: 'visible', ...SOON });
    const text = await settled(hover);
    await isBeside(hover, place);
    return text;
  });
}

/** "Loading..." stands there until the server has answered, and one answer may come after another. */
async function settled(hover: Locator): Promise<string> {
  return hover.evaluate(
    (element: HTMLElement) =>
      new Promise<string>((resolve, reject) => {
        const begun = performance.now();
        let [last, since] = ['', begun];
        const look = () => {
          const text = element.isConnected && !element.classList.contains('hidden') ? element.innerText.trim() : '';
          const now = performance.now();
          if (text !== last) [last, since] = [text, now];
          const read = text !== '' && !text.startsWith('Loading');
          // Nothing says that an answer is the last; a drawing that stays for so long has all of them.
          if (read && now - since > 150) return resolve(text);
          if (now - begun > 10_000 || (text === '' && now - begun > 1_000))
            return reject(new Error(`the hover says "${text}"`));
          requestAnimationFrame(look);
        };
        look();
      }),
    undefined,
    SOON,
  );
}

/** One that was asked for at the place before may come late, over a line further up or down. */
async function isBeside(hover: Locator, { y }: Point): Promise<void> {
  const box = await hover.boundingBox(SOON);
  const near = box !== null && Math.min(Math.abs(box.y - y), Math.abs(box.y + box.height - y)) < 40;
  if (!near) throw new Error('the hover belongs to another line');
}

/** Runs in the page: the middle of a word on the screen. */
function placeOf(lines: Element, wanted: { context: string; word: string }): Point | undefined {
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
