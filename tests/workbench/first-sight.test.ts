import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { goTo, hoverOver, hoverOverSquiggle, problems, replaceText, squiggles } from './editor.js';
import { type Host, startWorkbench, type Workbench } from './workbench.js';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));

describe.each<Host>(['node', 'browser'])('the extension in a workbench, running in %s', (host) => {
  let folder: string;
  let workbench: Workbench;
  let page: Page;
  const shot = (name: string) => workbench.shot(page, `${host}-${name}`);

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'dryfit-examples-'));
    cpSync(examples, folder, { recursive: true, filter: (path) => basename(path) !== 'broken' });
    workbench = await startWorkbench(host);
    page = await workbench.open(folder, 'periodicals.joinery');
  });

  afterEach(async ({ task }) => {
    if (task.result?.state !== 'fail') return;
    await shot(`failed-${task.name.replace(/\W+/g, '-')}`);
    console.error(workbench.log().slice(-4000));
  });

  afterAll(async () => {
    await workbench?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test('a part shows its size and what it follows from', async () => {
    const hover = await hoverOver(page, 'part shelf', 'shelf');
    await shot('1-part');
    expect(hover).toContain('564.6');
    expect(hover).toContain('538');
    expect(hover).toContain('width wide over lh and rh');
  });

  test('a joint shows the slots of both halves, the spacer and the stop', async () => {
    const hover = await hoverOver(page, 'butt shelf', 'butt');
    await shot('2-joint');
    // From the rear edge; the shelf is 22 short of the sides there.
    expect(hover).toContain('70, 180, 270, 420, 500');
    expect(hover).toContain('48, 158, 248, 398, 478');
    expect(hover).toMatch(/\bspacer\s+22\b/);
    expect(hover).toMatch(/\b350 from its bottom end/);
  });

  test('an example has no findings', async () => {
    expect(await squiggles(page)).toBe(0);
    expect(await problems(page)).toBe('No Problems');
  });

  test('a slot too near to an edge is underlined, and the hover says by how much', async () => {
    await replaceText(page, 'set back 16 from', 'set back 22 from');
    await goTo(page, 1);
    const hover = await hoverOverSquiggle(page);
    await shot('3-finding');
    // The shelf's own line is 70 − 28 = 42 from its rear edge, half a slot is 32.84: 9.16 stays where 10 is wanted.
    expect(hover).toContain('9.16');
    expect(hover).toContain('slot-near-edge');
    expect(await problems(page)).toMatch(/Errors: 1\b/);
  });

  test('the underline goes when the back is put right', async () => {
    await replaceText(page, 'set back 22 from', 'set back 16 from');
    await page.waitForFunction(() => document.querySelector('.squiggly-error, .squiggly-warning') === null);
    await page.locator('#status\\.problems a[aria-label="No Problems"]').waitFor();
    await shot('4-mended');
  });
});
