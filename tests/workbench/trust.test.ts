import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { problems, putCursor, replaceText, squiggles } from './editor.js';
import { hoverOver } from './hover.js';
import { notification } from './notification.js';
import { quickFix } from './quick-fix.js';
import { command } from './quick-input.js';
import { inWorkbench } from './session.js';
import { webview } from './webview.js';

describe('a folder that is not trusted', () => {
  const session = inWorkbench('node', 'periodicals.joinery', {
    user: { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never' },
  });

  test('has its findings, fixes and hovers all the same', async () => {
    const { page } = session;
    await page.locator('[id="status.workspaceTrust"]', { hasText: 'Restricted Mode' }).waitFor();
    expect(await hoverOver(page, 'butt shelf', 'butt')).toContain('48, 158, 248, 398, 478');
    await replaceText(page, 'rear set back 16 from', 'rear set back 22 from');
    await expect.poll(() => squiggles(page), { timeout: 60_000 }).toBeGreaterThan(0);
    await session.shot('trust-restricted');
    await putCursor(page, 'butt shelf');
    await quickFix(page, /leave out|line/i);
    await expect.poll(() => problems(page), { timeout: 60_000 }).toBe('No Problems');
  });

  test('is checked as a whole, which only reads', async () => {
    const { page } = session;
    await command(page, 'Dryfit: Check the Folder');
    await page.locator('.statusbar-item', { hasText: /Dryfit: \d+ files checked, 0 errors/ }).waitFor();
  });

  test('prints no sheets and says why, and shows the plan all the same', async () => {
    const { page, folder } = session;
    await command(page, 'Dryfit: Print Sheets…');
    const told = await notification(page, 'no sheets were printed');
    expect(await told.innerText()).toContain('not trusted');
    expect(existsSync(join(folder, 'tables'))).toBe(false);
    await command(page, 'Dryfit: Open Plan Beside');
    const plan = await webview(page, 'Print Sheets…');
    await plan.locator('.set-up').first().waitFor();
    await session.shot('trust-plan');
    await page.locator('.tab[data-resource-name="periodicals.joinery"]').click();
  });

  test('builds no tables and says why', async () => {
    const { page, folder } = session;
    await command(page, 'Dryfit: Build Tables of This File');
    const told = await notification(page, 'no tables were built');
    expect(await told.innerText()).toContain('not trusted');
    await session.shot('trust-no-tables');
    await told.getByRole('button', { name: 'Manage Trust' }).click();
    await page.locator('.workspace-trust-editor', { hasText: 'Restricted Mode' }).waitFor();
    expect(existsSync(join(folder, 'tables'))).toBe(false);
  });

  test('is asked for trust before any task runs, and runs none without it', async () => {
    const { page, folder } = session;
    await session.show('periodicals.joinery');
    await command(page, 'Tasks: Run Build Task');
    const asked = page.locator('.monaco-dialog-box');
    await asked.waitFor();
    await session.shot('trust-asked');
    await page.keyboard.press('Escape');
    await asked.waitFor({ state: 'detached' });
    expect(await page.locator('.terminal-wrapper').count()).toBe(0);
    expect(existsSync(join(folder, 'tables'))).toBe(false);
  });
});
