import { describe, expect, test } from 'vitest';
import { hoverOver, problems, quickFix, replaceText, squiggles } from './editor.js';
import { inWorkbench } from './session.js';

describe('a folder that is not trusted', () => {
  const session = inWorkbench('node', 'periodicals.joinery', {
    user: { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never' },
  });

  test('has its findings, fixes and hovers all the same', async () => {
    const { page } = session;
    await page.locator('[id="status.workspaceTrust"]', { hasText: 'Restricted Mode' }).waitFor();
    expect(await hoverOver(page, 'butt shelf', 'butt')).toContain('48, 158, 248, 398, 478');
    await replaceText(page, 'rear set back 16 from', 'rear set back 22 from');
    await expect.poll(() => squiggles(page), { timeout: 30_000 }).toBeGreaterThan(0);
    await session.shot('trust-restricted');
    await page.keyboard.press('Escape');
    await replaceText(page, 'butt shelf', 'butt shelf');
    await page.keyboard.press('Home');
    await quickFix(page, /leave out|line/i);
    await expect.poll(() => problems(page), { timeout: 30_000 }).toBe('No Problems');
  });
});
