import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { fileText, focusText, replaceText, save } from './editor.js';
import { command } from './quick-input.js';
import { reload } from './reload.js';
import { inWorkbench } from './session.js';
import { SOON, until } from './until.js';
import { webview } from './webview.js';

describe('a drawing whose file changes', () => {
  const session = inWorkbench('node', 'periodicals.joinery', { user: { 'files.autoSave': 'off' } });
  let drawing: FrameLocator;
  const said = () => drawing.locator('body').innerText();
  const title = () => drawing.locator('svg .title').first().textContent();
  const tab = (name: string) => session.page.locator('.tab', { hasText: name });

  beforeAll(async () => {
    await focusText(session.page);
    await command(session.page, 'Dryfit: Open Drawing Beside');
    drawing = await webview(session.page, 'Whole cabinet');
  });

  test('follows a server that is started again', async () => {
    await command(session.page, 'Dryfit: Restart Language Server');
    await replaceText(session.page, 'parameter wide = 600', 'parameter wide = 640');
    await expect.poll(title).toContain('640 wide');
    await expect.poll(() => drawing.locator('.standing').count()).toBe(0);
  });

  test('stays when the file is saved', async () => {
    await save(session.page);
    expect(await title()).toContain('640 wide');
    await expect.poll(() => drawing.locator('.standing').count()).toBe(0);
  });

  test('stays with the file it is of when the text is saved under another name', async () => {
    await replaceText(session.page, 'parameter wide = 640', 'parameter wide = 660');
    await expect.poll(title).toContain('660 wide');
    await focusText(session.page);
    await command(session.page, 'File: Save As...');
    const input = session.page.locator('.quick-input-widget input');
    const path = join(session.folder, 'periodicals-wide.joinery');
    // The dialogue puts in what the file is called now, once it has looked at the folder.
    await expect.poll(() => input.inputValue()).toContain('periodicals.joinery');
    await expect
      .poll(async () => {
        await input.fill(path, SOON);
        // Nothing shows that it has; it has when what was put in instead stays.
        await session.page.waitForTimeout(500);
        return await input.inputValue();
      })
      .toBe(path);
    await session.page.keyboard.press('Enter');
    await session.page.locator('.tab.active[data-resource-name="periodicals-wide.joinery"]').waitFor();
    await expect.poll(title).toContain('640 wide');
    expect(fileText(session.folder, 'periodicals.joinery')).toContain('parameter wide = 640');
    await session.shot('panel-3-saved-as');
  });

  test('goes with its file to another name', async () => {
    await session.show('periodicals.joinery');
    await command(session.page, 'File: Reveal Active File in Explorer View');
    const row = session.page.locator('.explorer-folders-view .monaco-list-row', { hasText: /^periodicals\.joinery$/ });
    const input = session.page.locator('.explorer-folders-view .monaco-inputbox input');
    await until(
      async () => {
        await row.click(SOON);
        await session.page.keyboard.press('F2');
        await input.fill('reading-room.joinery', SOON);
      },
      { between: () => session.page.keyboard.press('Escape') },
    );
    await input.press('Enter');
    await tab('Drawing of reading-room.joinery').waitFor();
    await expect.poll(() => drawing.locator('.standing').count()).toBe(0);
    await session.page.locator('.tab[data-resource-name="reading-room.joinery"]').click();
    await replaceText(session.page, 'parameter wide = 640', 'parameter wide = 620');
    await expect.poll(title).toContain('620 wide');
    await save(session.page);
  });

  test('says so when its file is deleted, and follows it again when it is back', async () => {
    const text = fileText(session.folder, 'reading-room.joinery');
    rmSync(join(session.folder, 'reading-room.joinery'));
    await expect.poll(said).toContain('has been deleted; drawn from the text that is still open');
    expect(await title()).toContain('620 wide');
    await session.page.locator('.tab[data-resource-name="reading-room.joinery"]').click();
    await focusText(session.page);
    await command(session.page, 'View: Close Editor');
    await expect.poll(said).toContain('has been deleted or moved away; what is drawn here is the last of it');
    await expect.poll(() => drawing.locator('main.stale svg.dryfit-drawing').count()).toBe(1);
    await session.shot('panel-4-deleted');
    writeFileSync(join(session.folder, 'reading-room.joinery'), text.replace('wide = 620', 'wide = 600'));
    await expect.poll(title).toContain('600 wide');
    await expect.poll(() => drawing.locator('.standing').count()).toBe(0);
  });

  test('says so when the window is reloaded after its file has gone', async () => {
    const text = fileText(session.folder, 'reading-room.joinery');
    rmSync(join(session.folder, 'reading-room.joinery'));
    await expect.poll(said).toContain('has been deleted or moved away');
    await reload(session.page, '/reading-room.joinery"');
    drawing = await webview(session.page, 'there is nothing to be drawn');
    await session.shot('panel-5-gone');
    writeFileSync(join(session.folder, 'reading-room.joinery'), text);
    await expect.poll(title).toContain('600 wide');
  });
});
