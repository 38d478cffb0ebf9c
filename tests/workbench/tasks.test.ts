import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cursor, lineOf, problems, replaceText } from './editor.js';
import { command } from './quick-input.js';
import { inWorkbench } from './session.js';
import { inTerminal, readable, runTask } from './terminal.js';

const patient = { timeout: 60_000 };

describe('tasks', () => {
  const session = inWorkbench('node', 'periodicals.joinery', { user: readable });

  test('a check runs to its end, and what it prints becomes a problem at its line in a file that is not open', async () => {
    const { page, folder } = session;
    const text = readFileSync(join(folder, 'periodicals.joinery'), 'utf8');
    writeFileSync(join(folder, 'rack.joinery'), text.replace('rear set back 16', 'rear set back 15'));
    expect(await problems(page)).toBe('No Problems');
    await inTerminal(page, () => runTask(page, 'dryfit', 'dryfit: check all'), /1 error in /);
    await expect.poll(() => problems(page), patient).toMatch(/Errors: 1\b/);
    await session.shot('task-check');
    await command(page, 'Problems: Focus on Problems View');
    const row = page.locator('.markers-panel .monaco-list-row', {
      hasText: 'the setback of shelf from the rear is 21',
    });
    expect(await row.innerText()).toContain('spacer-not-in-stock');
    await row.dblclick();
    await page.locator('.tab.active[data-resource-name="rack.joinery"]').waitFor();
    const line = lineOf(folder, 'rack.joinery', 'butt shelf');
    await expect.poll(() => cursor(page), patient).toMatchObject({ line, column: 3 });
    await session.shot('task-problem');
  });

  test('tables are built from what stands in the editor', async () => {
    const { page, folder } = session;
    await session.show('periodicals.joinery');
    await replaceText(page, '4 of Periodicals(wide = 600)', '4 of Periodicals(wide = 640)');
    const build = () => command(page, 'Dryfit: Build Tables of This File');
    const written = await inTerminal(page, build, /wrote \d+ files to tables/);
    expect(written).toContain('> dryfit build periodicals.joinery --out tables');
    const parts = readFileSync(join(folder, 'tables/Periodicals-wide-640/parts.csv'), 'utf8');
    // 640 less two sides of 17.7.
    expect(parts).toContain('604.6');
    await session.shot('task-build');
  });

  test('a task of the folder says what it lacks', async () => {
    const { page, folder } = session;
    mkdirSync(join(folder, '.vscode'), { recursive: true });
    const task = { type: 'dryfit', command: 'draw', label: 'draw the rack' };
    writeFileSync(join(folder, '.vscode/tasks.json'), JSON.stringify({ version: '2.0.0', tasks: [task] }));
    await inTerminal(page, () => runTask(page, 'draw the rack'), /"draw" needs a "file"/);
  });
});
