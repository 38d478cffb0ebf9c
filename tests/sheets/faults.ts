import type { Mark, Page } from '@dryfit/output';

type Words = Extract<Mark, { kind: 'text' }>;
export const wordsOn = (page: Page): readonly Words[] =>
  page.marks.filter((mark): mark is Words => mark.kind === 'text');

/** The least box that can hold the words, told by the number of their letters alone. */
function boxOf({ x, y, text, size, align, upright }: Words) {
  const wide = text.length * size * 0.3;
  const tall = size * 0.6;
  const back = align === 'middle' ? wide / 2 : align === 'end' ? wide : 0;
  if (upright) return { left: x - tall, right: x, top: y - wide + back, bottom: y + back };
  return { left: x - back, right: x - back + wide, top: y - tall, bottom: y };
}

/** What is not on the paper, and words that stand on other words. */
export function faults(page: Page): string[] {
  const found: string[] = [];
  for (const mark of page.marks) {
    const box =
      mark.kind === 'text'
        ? boxOf(mark)
        : mark.kind === 'box'
          ? { left: mark.x, right: mark.x + mark.width, top: mark.y, bottom: mark.y + mark.height }
          : {
              left: Math.min(mark.from[0], mark.to[0]),
              right: Math.max(mark.from[0], mark.to[0]),
              top: Math.min(mark.from[1], mark.to[1]),
              bottom: Math.max(mark.from[1], mark.to[1]),
            };
    if (box.left < 5 || box.top < 5 || box.right > page.width - 5 || box.bottom > page.height - 5)
      found.push(`off the page: ${JSON.stringify(mark)}`);
  }
  const words = wordsOn(page);
  words.forEach((one, i) => {
    const a = boxOf(one);
    for (const other of words.slice(i + 1)) {
      const b = boxOf(other);
      if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        found.push(`"${one.text}" on "${other.text}"`);
    }
  });
  return found;
}
