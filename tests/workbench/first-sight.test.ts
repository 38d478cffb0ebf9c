import { describe, expect, test } from 'vitest';
import { goTo, problems, replaceText, squiggles } from './editor.js';
import { hoverOver, hoverOverSquiggle } from './hover.js';
import { inWorkbench } from './session.js';
import type { Host } from './workbench.js';

describe.each<Host>(['node', 'browser'])('the extension in a workbench, running in %s', (host) => {
  const session = inWorkbench(host, 'periodicals.joinery');
  const { shot } = session;

  test('a part shows its size and what it follows from', async () => {
    const hover = await hoverOver(session.page, 'part shelf', 'shelf');
    await shot('1-part');
    expect(hover).toContain('564.6');
    expect(hover).toContain('538');
    expect(hover).toContain('width wide over lh and rh');
  });

  test('a joint shows the slots of both halves, the spacer and the stop', async () => {
    const hover = await hoverOver(session.page, 'butt shelf', 'butt');
    await shot('2-joint');
    // From the rear edge; the shelf is 22 short of the sides there.
    expect(hover).toContain('70, 180, 270, 420, 500');
    expect(hover).toContain('48, 158, 248, 398, 478');
    expect(hover).toMatch(/\bspacer\s+22\b/);
    expect(hover).toMatch(/\b350 from its bottom end/);
  });

  test('an example has no findings', async () => {
    await expect.poll(() => squiggles(session.page)).toBe(0);
    await expect.poll(() => problems(session.page)).toBe('No Problems');
  });

  test('a slot too near to an edge is underlined, and the hover says by how much', async () => {
    await replaceText(session.page, 'set back 16 from', 'set back 22 from');
    await goTo(session.page, 1);
    const hover = await hoverOverSquiggle(session.page);
    await shot('3-finding');
    // The shelf's own line is 70 − 28 = 42 from its rear edge, half a slot is 32.84: 9.16 stays where 10 is wanted.
    expect(hover).toContain('9.16');
    expect(hover).toContain('slot-near-edge');
    await expect.poll(() => problems(session.page)).toMatch(/Errors: 1\b/);
  });

  test('the underline goes when the back is put right', async () => {
    await replaceText(session.page, 'set back 22 from', 'set back 16 from');
    await expect.poll(() => squiggles(session.page)).toBe(0);
    await expect.poll(() => problems(session.page)).toBe('No Problems');
    await shot('4-mended');
  });
});
