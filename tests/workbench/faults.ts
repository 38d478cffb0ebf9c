import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { FrameLocator, Locator } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Serious and critical faults of a webview, by axe's rules. */
export async function faults(frame: FrameLocator): Promise<readonly string[]> {
  const body: Locator = frame.locator('body');
  // The webview's policy allows no foreign script in the page; the browser's own console may run one.
  return body.evaluate(async (_, source) => {
    const run = new Function(`${source}; return axe;`);
    const found = await (run() as { run(): Promise<{ violations: Violation[] }> }).run();
    interface Violation {
      id: string;
      impact: string;
      help: string;
      nodes: { html: string; failureSummary: string }[];
    }
    return found.violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, help, nodes }) =>
        nodes.map(({ html, failureSummary }) => `${id}: ${help}: ${html.slice(0, 200)}: ${failureSummary}`),
      );
  }, axe);
}
