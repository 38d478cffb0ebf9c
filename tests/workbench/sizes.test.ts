import { describe, expect, test } from 'vitest';
import { fileText, replaceText, selectText, visibleLines } from './editor.js';
import { hoverOver } from './hover.js';
import { onPaper } from './positions.js';
import { inWorkbench } from './session.js';

describe('sizes and slots in the text', () => {
  const session = inWorkbench('node', 'periodicals.joinery');

  test('a joint picked at random shows the positions that its text comes to on paper', async () => {
    const file = Math.random() < 0.5 ? 'periodicals.joinery' : 'bookcase.joinery';
    const joints = onPaper(session.folder, file);
    const joint = joints[Math.floor(Math.random() * joints.length)];
    if (joint === undefined) throw new Error(`no joint of ${file} can be worked out on paper`);
    await session.show(file);
    await selectText(session.page, joint.statement);
    await session.page.keyboard.press('ArrowLeft');
    const hover = await hoverOver(session.page, joint.statement, 'butt');
    await session.shot('sizes-joint');
    const told = `${file}, ${joint.statement}`;
    expect(hover, told).toContain(joint.host.join(', '));
    expect(hover, told).toContain(joint.entering.join(', '));
    if (joint.spacer > 0) expect(hover, told).toMatch(new RegExp(`\\bspacer\\s+${joint.spacer}\\b`));
  });

  test('a part shows a drawing of itself on hover', async () => {
    await session.show('periodicals.joinery');
    await hoverOver(session.page, 'part shelf', 'shelf');
    const image = session.page.locator('.monaco-hover:not(.hidden) img').first();
    await image.waitFor();
    await session.page.waitForFunction(() => {
      const shown = document.querySelector<HTMLImageElement>('.monaco-hover:not(.hidden) img');
      return shown?.complete && shown.naturalWidth > 100;
    });
    await session.shot('sizes-part-drawing');
    expect(await image.getAttribute('alt')).toContain('shelf');
  });

  test('a joint shows how far off it comes, and follows what the shop says of its stops', async () => {
    const { page, folder } = session;
    const said = (what: string) =>
      Number(new RegExp(`^  ${what} ± (\\S+)$`, 'm').exec(fileText(folder, 'shop.joinery'))?.[1]);
    const [stop, fence] = [said('stop'), said('fence')];
    // The top's end is milled against the fence, its slots in the sides by the stop; both are measured from the top.
    const step = async () => /step at the top: .*/.exec(await hoverOver(page, 'butt top', 'butt'))?.[0];
    const worst = (off: number) => `at the worst ± ${Number((off + fence).toFixed(2))}`;
    await session.show('periodicals.joinery');
    await expect.poll(step).toContain(worst(stop));
    await session.shot('sizes-joint-off');
    await session.show('shop.joinery');
    await replaceText(page, `stop ± ${stop}`, 'stop ± 0.15');
    await session.show('periodicals.joinery');
    await expect.poll(step).toContain(worst(0.15));
    await session.show('shop.joinery');
    await replaceText(page, 'stop ± 0.15', `stop ± ${stop}`);
    await session.show('periodicals.joinery');
    await expect.poll(step).toContain(worst(stop));
  });

  test('a derived size stands in its line, and follows the shop file of the sheet', async () => {
    const sizes = async () => (await visibleLines(session.page)).find((line) => /part shelf\s/.test(line)) ?? '';
    await session.show('periodicals.joinery');
    await expect.poll(sizes, { timeout: 60_000 }).toContain('564.6');
    await session.shot('sizes-hints');
    await session.show('shop.joinery');
    await replaceText(session.page, 'measured 17.7', 'measured 17.5');
    await session.show('periodicals.joinery');
    // Two sides that are 0.2 thinner each leave 0.4 more between them.
    await expect.poll(sizes, { timeout: 60_000 }).toContain('565');
    await session.show('shop.joinery');
    await replaceText(session.page, 'measured 17.5', 'measured 17.7');
    await session.show('periodicals.joinery');
    await expect.poll(sizes, { timeout: 60_000 }).toContain('564.6');
  });
});
