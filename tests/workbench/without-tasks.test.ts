import { describe, expect, test } from 'vitest';
import { problems, replaceText, squiggles } from './editor.js';
import { hoverOver } from './hover.js';
import { notification } from './notification.js';
import { command } from './quick-input.js';
import { inWorkbench } from './session.js';
import { webview } from './webview.js';

const patient = { timeout: 60_000 };

describe('an editor in a browser', () => {
  const session = inWorkbench('browser', 'periodicals.joinery');

  test('builds no tables, says why, and leads to the slot table', async () => {
    const { page } = session;
    expect(await hoverOver(page, 'butt shelf', 'butt')).toContain('48, 158, 248, 398, 478');
    await command(page, 'Dryfit: Build Tables of This File');
    const told = await notification(page, 'no tables were built');
    expect(await told.innerText()).toContain('runs in a browser');
    await session.shot('tables-refused-in-browser');
    await told.getByRole('button', { name: 'Open Slot Table' }).click();
    const table = await webview(page, 'shelf');
    await expect.poll(() => table.locator('tbody tr').count(), patient).toBeGreaterThan(10);
  });
});

describe.each(['node', 'browser'] as const)('a folder on no disk (%s)', (host) => {
  const session = inWorkbench(host, 'periodicals.joinery', { virtual: true });

  test('has its sizes by what it imports, and its findings', async () => {
    const { page } = session;
    // The pattern and the sheet stand in the shop's file.
    expect(await hoverOver(page, 'butt shelf', 'butt')).toContain('48, 158, 248, 398, 478');
    await expect.poll(() => problems(page), patient).toBe('No Problems');
    await replaceText(page, 'rear set back 16 from', 'rear set back 15 from');
    await expect.poll(() => squiggles(page), patient).toBeGreaterThan(0);
    await session.shot('virtual-folder');
    await replaceText(page, 'rear set back 15 from', 'rear set back 16 from');
    await expect.poll(() => problems(page), patient).toBe('No Problems');
  });

  test('builds no tables and says why', async () => {
    const { page } = session;
    await command(page, 'Dryfit: Build Tables of This File');
    const told = await notification(page, 'no tables were built');
    expect(await told.innerText()).toContain(host === 'node' ? 'lies on no disk' : 'runs in a browser');
    await session.shot('tables-refused-in-virtual-folder');
  });

  test('has its slot table', async () => {
    const { page } = session;
    await command(page, 'Dryfit: Open Slot Table');
    const table = await webview(page, 'shelf');
    await expect.poll(() => table.locator('tbody tr').count(), patient).toBeGreaterThan(10);
  });
});
