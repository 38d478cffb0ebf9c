import type { Page } from 'playwright-core';
import { command } from './editor.js';

/** Settings under which a terminal's letters stand in the page, instead of being painted. */
export const readable = { 'terminal.integrated.gpuAcceleration': 'off', 'terminal.integrated.minimumContrastRatio': 1 };

/** What stands in the terminal in front, its lines as long as they were written as far as the panel's width lets them. */
export async function terminalText(page: Page): Promise<string> {
  const rows = await page.locator('.terminal-wrapper.active .xterm-rows > div').allInnerTexts();
  return rows.map((row) => row.replaceAll('\u00a0', ' ').trimEnd()).join('\n');
}

/** Starts a task by choosing its kind, where it is not the folder's own, and its name. */
export async function runTask(page: Page, ...names: readonly string[]): Promise<void> {
  // A task that has just been written down is listed once the workbench has seen the file.
  for (let attempt = 1; ; attempt++) {
    await command(page, 'Tasks: Run Task');
    try {
      for (const name of names) {
        const row = page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first();
        await row.click({ timeout: 10_000 });
      }
      return;
    } catch (error) {
      if (attempt === 5) throw error;
      await page.keyboard.press('Escape');
    }
  }
}
