import type { Page } from 'playwright-core';
import { command } from './quick-input.js';
import { come, until } from './until.js';

/** Settings under which a terminal's letters stand in the page, instead of being painted. */
export const readable = { 'terminal.integrated.gpuAcceleration': 'off', 'terminal.integrated.minimumContrastRatio': 1 };

/** What stands in the terminal in front, its lines as long as they were written as far as the panel's width lets them. */
export async function terminalText(page: Page): Promise<string> {
  const rows = await page.locator('.terminal-wrapper.active .xterm-rows > div').allInnerTexts();
  return rows.map((row) => row.replaceAll('\u00a0', ' ').trimEnd()).join('\n');
}

/**
 * Starts something that writes into a terminal, and again where nothing of it shows: the workbench's own host of terminals
 * is held up by a busy machine, and opens none meanwhile. What is written in the end.
 */
export const inTerminal = (page: Page, start: () => Promise<unknown>, shows: RegExp): Promise<string> =>
  until(async () => {
    await start();
    return come(
      () => terminalText(page),
      (text) => shows.test(text),
      { timeout: 40_000 },
    );
  });

/** Starts a task by choosing its kind, where it is not the folder's own, and its name. */
export async function runTask(page: Page, ...names: readonly string[]): Promise<void> {
  // A task that has just been written down is listed once the workbench has seen the file.
  await until(
    async () => {
      await command(page, 'Tasks: Run Task');
      for (const name of names) {
        await page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().click({ timeout: 10_000 });
      }
    },
    { between: () => page.keyboard.press('Escape') },
  );
}
