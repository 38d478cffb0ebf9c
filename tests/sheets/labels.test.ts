import { createRequire } from 'node:module';
import { labelCode, labelPages, type Mark, type Page } from '@dryfit/output';

import { describe, expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { examineText } from '../support/read.js';

/** Another reader of codes; its declarations and its module do not agree on what is exported, so it is typed here. */
const scan: (dots: Uint8ClampedArray, wide: number, tall: number) => { readonly data: string } | null = createRequire(
  import.meta.url,
)('jsqr').default;

/** Dots of a printer in a millimetre: 300 in an inch. */
const DOTS = 300 / 25.4;

/** A page as a printer of 300 dots in an inch lays it down: what is black and what is white. */
function printed({ width, height, marks }: Page): {
  readonly dots: Uint8ClampedArray;
  readonly across: number;
  readonly down: number;
} {
  const [across, down] = [Math.round(width * DOTS), Math.round(height * DOTS)];
  const dots = new Uint8ClampedArray(across * down * 4).fill(255);
  for (const mark of marks) {
    if (mark.kind !== 'box' || (mark.grey ?? 0) < 1) continue;
    const black = mark as Extract<Mark, { kind: 'box' }>;
    for (let y = Math.round(black.y * DOTS); y < Math.round((black.y + black.height) * DOTS); y++)
      for (let x = Math.round(black.x * DOTS); x < Math.round((black.x + black.width) * DOTS); x++)
        dots.fill(0, (y * across + x) * 4, (y * across + x) * 4 + 3);
  }
  return { dots, across, down };
}

/** Each label of a page cut out and scanned. */
function scanned(page: Page): (string | undefined)[] {
  const { dots, across } = printed(page);
  const [wide, tall] = [(page.width - 16) / 3, (page.height - 16) / 7];
  const found: (string | undefined)[] = [];
  for (let row = 0; row < 7; row++)
    for (let column = 0; column < 3; column++) {
      const [x0, y0] = [Math.round((8 + column * wide) * DOTS), Math.round((8 + row * tall) * DOTS)];
      const [w, h] = [Math.floor(wide * DOTS), Math.floor(tall * DOTS)];
      const cut = new Uint8ClampedArray(w * h * 4);
      for (let y = 0; y < h; y++)
        cut.set(dots.subarray(((y0 + y) * across + x0) * 4, ((y0 + y) * across + x0 + w) * 4), y * w * 4);
      found.push(scan(cut, w, h)?.data);
    }
  return found;
}

describe('labels', () => {
  test.each(['A4', 'Letter'] as const)('one for every piece on %s, and its code says which it is', async (paper) => {
    const { results } = await examineText(exampleText('bookcase.joinery'));
    const [result] = results;
    if (!result) throw new Error('no bookcase');
    const pages = labelPages({ name: 'Hall', items: [{ result, count: 3 }] }, paper, { units: 'mm' });
    const codes = pages.flatMap(scanned).filter((code) => code !== undefined);
    const wanted = [1, 2, 3].flatMap((copy) => result.fit.parts.map(({ id }) => labelCode('Hall', result, copy, id)));
    expect(codes.sort()).toEqual(wanted.sort());
    expect(codes).toContain('Hall/Bookcase/2/lshelf 3');
  });

  test('say name, cabinet, job, size and datum in words', async () => {
    const { results } = await examineText(exampleText('periodicals.joinery'));
    const items = results.slice(0, 1).map((result) => ({ result, count: 2 }));
    const [page] = labelPages({ name: 'Library', items }, 'A4', { units: 'mm' });
    const words = (page?.marks ?? []).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    for (const wanted of [
      'shelf',
      'job Library',
      'Periodicals, 1 of 2',
      '564.6 x 538 x 17.7 birch18',
      'face side',
      'bottom face',
      'face edge, datum',
      'rear edge',
      'triangle: 2 of 2 from the left',
      'no slots',
    ])
      expect(words).toContain(wanted);
  });
});
