import type { Page } from 'playwright-core';
import { come } from './until.js';

/**
 * Loads the window anew, with the editors that were open in it. An editor in a browser writes down which these are and
 * what their pages have kept when its tab is looked away from, and else only in an idle moment, which a busy machine may
 * not have for minutes; it writes nothing when it is left. So the window is made one pixel wider and looked away from
 * until that width has been written down, and with it all the rest.
 * @param kept words that a page has kept, in JSON: what a page says comes to the workbench a moment later
 */
export async function reload(page: Page, ...kept: readonly string[]): Promise<void> {
  const wide = () => page.locator('.part.editor').evaluate((part) => part.clientWidth);
  const before = await wide();
  const { width = 0, height = 0 } = page.viewportSize() ?? {};
  await page.setViewportSize({ width: width + 1, height });
  await come(wide, (now) => now === before + 1);
  const written = async () => {
    await page.evaluate(lookAway);
    return (await page.evaluate(editorsWritten)).replaceAll('\\', '');
  };
  const all = [`"width":${before + 1},`, ...kept];
  await come(written, (text) => all.every((words) => text.includes(words)), { timeout: 60_000 });
  // An address that asks for a file opens that file and no other.
  const address = new URL(page.url());
  address.searchParams.delete('payload');
  await page.goto(`${address}`);
  await page.locator('.monaco-workbench .tab').first().waitFor();
}

/** Runs in the page: its tab is looked at and then another, and it has the keyboard again. */
function lookAway(): void {
  for (const looked of [true, false]) {
    document.hasFocus = () => looked;
    document.dispatchEvent(new Event('visibilitychange'));
  }
  Reflect.deleteProperty(document, 'hasFocus');
}

/** Runs in the page: what the browser holds of the folder's editors. */
async function editorsWritten(): Promise<string> {
  const answer = <T>(request: IDBRequest<T>) =>
    new Promise<T>((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const ofFolder = (await indexedDB.databases()).find(({ name }) => /^vscode-web-state-db-(?!global)/.test(name ?? ''));
  if (ofFolder?.name === undefined) return '';
  const database = await answer(indexedDB.open(ofFolder.name));
  try {
    const items = database.transaction('ItemTable').objectStore('ItemTable');
    return String(await answer(items.get('memento/workbench.parts.editor')));
  } finally {
    database.close();
  }
}
