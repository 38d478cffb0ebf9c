import { type PatternChoice, patternsFor } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { codesOf } from '../support/look.js';
import { examineText, fitText } from '../support/read.js';

const shelf = (name: string, deep: number, layout: string) => `
cabinet ${name} {
  part lh, rh : upright of birch18
  part shelf : level of birch18
  width 600 over lh and rh
  height 720 of lh, rh
  depth ${deep} of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt shelf between lh and rh { bottom 200 above lh.bottom  flush rear, front  connect biscuit20 by ${layout} }
}
`;

async function choice(...cabinets: readonly string[]): Promise<PatternChoice> {
  const { results } = await examineText(`units mm\nimport "shop.joinery"\n${cabinets.join('\n')}`);
  return patternsFor(results.map(({ spec }) => spec));
}

const lines = ({ fewest }: PatternChoice) => fewest.map((pattern) => pattern.lines.join(', '));

describe('the patterns a shop needs', () => {
  test('one, where one joint’s lines lie among another’s', async () => {
    const found = await choice(
      shelf('Deep', 560, 'lines 70, 180, 270, 420, 500'),
      shelf('Low', 320, 'lines 70, 180, 270'),
    );
    expect([lines(found), found.atLeast, found.kept]).toEqual([['70, 180, 270, 420, 500'], 1, 2]);
  });

  test('two, where a line of one would run out of the other', async () => {
    // At 320 a line at 300 breaks out of the front, so the long pattern does not serve the low cabinet.
    const found = await choice(
      shelf('Deep', 560, 'lines 70, 180, 300, 420, 500'),
      shelf('Low', 320, 'lines 90, 160, 240'),
    );
    expect(found.fewest.length).toBe(found.atLeast);
    for (const one of found.fewest) expect(one.serves.length).toBeGreaterThan(0);
    expect(new Set(found.fewest.flatMap(({ serves }) => serves))).toEqual(new Set([0, 1]));
    // Written out, each joint with a pattern that serves it has no finding.
    for (const { lines: own, serves } of found.fewest)
      for (const joint of serves) {
        const text = shelf('Tried', joint === 0 ? 560 : 320, `lines ${own.join(', ')}`);
        expect(codesOf((await fitText(`units mm\nimport "shop.joinery"\n${text}`)).findings)).toEqual([]);
      }
  });

  test('what one more would bring is told, most first', async () => {
    const { more, kept, joints, fewest } = await choice(
      shelf('One', 560, 'lines 70, 180, 270, 420, 500'),
      shelf('Two', 560, 'lines 75, 185, 275, 425, 495'),
      shelf('Three', 560, 'lines 75, 185, 275, 425, 495'),
    );
    expect([joints.length, fewest.length]).toEqual([3, 1]);
    expect(kept + more.reduce((sum, { keeps }) => sum + keeps, 0)).toBe(3);
    expect(more.map(({ keeps }) => keeps)).toEqual(more.map(({ keeps }) => keeps).sort((a, b) => b - a));
  });

  test('none, where nothing is connected', async () => {
    expect(await patternsFor([])).toMatchObject({ joints: [], fewest: [], atLeast: 0 });
  });

  test('every joint of an example is served by its own at least', async () => {
    const { results } = await examineText(exampleText('bookcase.joinery'));
    const found = await patternsFor(results.map(({ spec }) => spec));
    expect([found.unserved, lines(found)]).toEqual([[], ['80, 160, 240']]);
  });
});
