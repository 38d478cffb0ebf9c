import type { Locator, Page } from 'playwright-core';

/** The message in the corner that says so, once it has come. */
export async function notification(page: Page, words: string): Promise<Locator> {
  const told = page.locator('.notifications-toasts .notification-list-item', { hasText: words }).first();
  await told.waitFor();
  return told;
}
