import { type Finding, say } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { locate, mm, source, TEXT } from '../periodicals.fixture.js';
import type { Locate } from '../place.js';
import { findingsJson } from './found.js';
import { findingsText, summary } from './text.js';

const MM = { units: 'mm' } as const;

function finding(more: Partial<Finding> = {}): Finding {
  return {
    code: 'slot-near-edge',
    severity: 'error',
    message: say`slot 1 of shelf leaves ${mm('5.36')} to its rear edge; at least ${mm(10)} is wanted`,
    cure: say`Move the first line in by ${mm('4.64')} or more.`,
    source: source('butt shelf between lh and rh'),
    related: [{ message: ['the lines come from here'], source: source('part lh') }],
    about: { parts: ['shelf'], joint: 'shelf / lh', slots: ['shelf / lh shelf 1'] },
    data: { least: '10' },
    ...more,
  };
}

describe('findings as text', () => {
  it('quote the line, mark the place, and give cure and related places', () => {
    expect(findingsText([{ finding: finding(), cabinets: [['Periodicals']] }], { format: MM, locate })).toBe(
      `error[slot-near-edge] slot 1 of shelf leaves 5.36 to its rear edge; at least 10 is wanted
 at bases.joinery:4:3
4 |   butt shelf between lh and rh { flush front }
  |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  = cure: Move the first line in by 4.64 or more.
  = see bases.joinery:3:3: the lines come from here
  = in Periodicals

`,
    );
  });

  it('print lengths in inches with what was lost', () => {
    const text = findingsText([{ finding: finding(), cabinets: [] }], {
      format: { units: 'in', denominator: 64 },
      locate,
    });
    // 5.36 mm lies between 13/64 in (5.159375) and 7/32 in (5.55625), nearer to the latter.
    expect(text).toContain('leaves 7/32 (-0.2 mm lost) to its rear edge; at least 25/64 (+0.08 mm lost) is wanted');
  });

  it('come in the order of the text, and what several cabinets share is said once', () => {
    const first = finding({ code: 'never-used', severity: 'warning', source: source('part lh'), related: [] });
    const found = [
      { finding: finding(), cabinets: [['Periodicals']] },
      { finding: finding(), cabinets: [['Periodicals (wide ', mm(450), ')']] },
      { finding: first, cabinets: [] },
    ];
    const text = findingsText(found, { format: MM, locate });
    expect(text.match(/\w+\[[\w-]+\]/g)).toEqual(['warning[never-used]', 'error[slot-near-edge]']);
    expect(text).toContain('= in Periodicals; Periodicals (wide 450)');
    expect(findingsJson(found, 1, locate, MM)).toMatchObject({ files: 1, errors: 1, warnings: 1, infos: 0 });
  });

  it('show control characters of a file instead of sending them to the terminal', () => {
    const evil: Locate = () => ({
      file: 'a\u001b[2J.joinery',
      line: 1,
      column: 1,
      endLine: 1,
      endColumn: 5,
      lines: ['part\u001b[31m x'],
    });
    const text = findingsText([{ finding: finding({ related: [] }), cabinets: [] }], { format: MM, locate: evil });
    expect(text).not.toContain('\u001b');
    expect(text).toContain('part␛[31m x');
  });

  it.each([
    ['a tab before the place', '\tpart lh', 2, 6, '  part lh', '  ^^^^'],
    ['an empty place', 'part lh', 5, 5, 'part lh', '    ^'],
    ['a place at the very end', 'part', 5, 5, 'part', '    ^'],
  ])('mark %s', (_, line, column, endColumn, shown, marks) => {
    const there: Locate = () => ({ file: 'a.joinery', line: 12, column, endLine: 12, endColumn, lines: [line] });
    const [, , quoted, marked] = findingsText([{ finding: finding({ related: [] }), cabinets: [] }], {
      format: MM,
      locate: there,
    }).split('\n');
    expect([quoted, marked]).toEqual([`12 | ${shown}`, `   | ${marks}`]);
  });

  it('mark the first line of a place of several lines and say where it ends', () => {
    const there: Locate = () => ({
      file: 'a.joinery',
      line: 9,
      column: 3,
      endLine: 11,
      endColumn: 4,
      lines: ['  butt x {', '', '  }'],
    });
    expect(
      findingsText([{ finding: finding({ related: [] }), cabinets: [] }], { format: MM, locate: there }),
    ).toContain('   |   ^^^^^^^^ to line 11\n');
  });

  it('cut a very long line to what is marked', () => {
    const line = `${'x'.repeat(5000)}here${'y'.repeat(5000)}`;
    const there: Locate = () => ({
      file: 'a.joinery',
      line: 1,
      column: 5001,
      endLine: 1,
      endColumn: 5005,
      lines: [line],
    });
    const [, , quoted = '', marked = ''] = findingsText([{ finding: finding({ related: [] }), cabinets: [] }], {
      format: MM,
      locate: there,
    }).split('\n');
    expect(quoted.length).toBeLessThan(200);
    expect(quoted.slice(marked.indexOf('^'), marked.lastIndexOf('^') + 1)).toBe('here');
  });

  it('name a text that is not at hand', () => {
    const text = findingsText([{ finding: finding({ related: [] }), cabinets: [] }], {
      format: MM,
      locate: () => undefined,
    });
    expect(text).toContain('at file:///bases.joinery\n');
    expect(TEXT).toContain('Periodicals');
  });
});

describe('the count of findings', () => {
  it.each([
    [{ errors: 2, warnings: 1, infos: 0 }, 3, '2 errors and 1 warning in 3 files'],
    [{ errors: 1, warnings: 2, infos: 1 }, 1, '1 error, 2 warnings and 1 note in 1 file'],
    [{ errors: 0, warnings: 0, infos: 0 }, 2, 'no findings in 2 files'],
    [{ errors: 10, warnings: 0, infos: 0 }, 2, '10 errors in 2 files'],
  ])('is said in words', (counts, files, words) => {
    expect(summary(counts, files)).toBe(words);
  });
});
