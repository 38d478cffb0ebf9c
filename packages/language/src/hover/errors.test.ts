import { describe, expect, it } from 'vitest';
import { example, hoverIn } from './hover.fixture.js';

const periodicals = example('periodicals.joinery');

describe('the hover of a joint', () => {
  it('shows what may be off at it, and that the sheet drops out where both halves are measured from', async () => {
    const [top, shelf] = await hoverIn(periodicals, '|butt top', '|butt shelf');
    expect(top).toContain(
      '- step at the top: ± 0.06, at the worst ± 0.1, of 0.3 let pass; mostly stop for lh (top / lh); the thickness of the sheet drops out',
    );
    expect(top).toMatch(/- flush at the front: ± 0\.2, at the worst ± 0\.45, of 0\.3 let pass/);
    expect(top).toMatch(/- opening of the joint: ± 0\.22/);
    expect(shelf).toMatch(/- place of the bottom of shelf on lh: ± 0\.06/);
  });

  it('shows the sheet in the step at the face that the slots are not measured from', async () => {
    const [top] = await hoverIn(
      periodicals.replace('{ flush top, rear', '{ reference bottom  flush top, rear'),
      '|butt top',
    );
    expect(top).toMatch(
      /- step at the top: 0\.2 ± 0\.23, at the worst −0\.2 to 0\.6, of 0\.3 let pass; mostly thickness of top/,
    );
  });

  it('goes by the worst case where the shop does', async () => {
    const text = `${periodicals}\ntolerances { stop ± 0.1  reckon worst case }\n`;
    const [top] = await hoverIn(text, '|butt top');
    expect(top).toContain('- step at the top: ± 0.1, everything off at once, of 0.3 let pass');
  });

  it('tells of tolerances what they are, and what none is written for', async () => {
    const [entry] = await hoverIn('tolerances { stop ± 0.1  cup 0.3 }\n', '|tolerances');
    expect(entry).toContain('- stop ± 0.1');
    expect(entry).toContain('- cup up to 0.3 mm');
    expect(entry).toMatch(/taken to be nothing: saw, out of square, mitre/);
  });
});
