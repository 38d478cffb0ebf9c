import type { FrameLocator, Page } from 'playwright-core';

/** The document of a webview whose inner text holds the words. It stays that one whatever others come and go. */
export async function webview(page: Page, holds: string): Promise<FrameLocator> {
  const frames = page.locator('iframe.webview.ready');
  await frames.first().waitFor();
  const seen = new Set<string>();
  for (const end = Date.now() + 50_000; Date.now() < end; await page.waitForTimeout(200)) {
    for (const name of await frames.evaluateAll((all) => all.map((one) => one.getAttribute('name') ?? ''))) {
      const frame = page.frameLocator(`iframe.webview[name="${name}"]`).frameLocator('#active-frame');
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
