import type { FrameLocator, Page } from 'playwright-core';
import { come } from './until.js';

/** The document of a webview whose inner text holds the words. It stays that one whatever others come and go. */
export async function webview(page: Page, holds: string): Promise<FrameLocator> {
  const frames = page.locator('iframe.webview.ready');
  await frames.first().waitFor();
  const frameOf = (name: string) => page.frameLocator(`iframe.webview[name="${name}"]`).frameLocator('#active-frame');
  const read = async (name: string) => {
    // One that goes meanwhile, or is still empty, holds nothing.
    const text = await frameOf(name)
      .locator('body')
      .innerText({ timeout: 3_000 })
      .catch(() => '');
    return { name, isIt: text.includes(holds), text: text.slice(0, 200) };
  };
  const seen = await come(
    async () =>
      Promise.all((await frames.evaluateAll((all) => all.map((one) => one.getAttribute('name') ?? ''))).map(read)),
    (all) => all.some(({ isIt }) => isIt),
    { timeout: 50_000 },
  );
  return frameOf(seen.find(({ isIt }) => isIt)?.name ?? '');
}
