import { type Element, element } from './element.js';
import { LINE, type Patch, rectOf, round, TEXT, textWidth } from './elevation/ink.js';
import type { Flat } from './exploded/view.js';
import type { SceneMark } from './scene.js';
import { markOf } from './shape.js';

/** Half the size of the cross at a marked place, on paper. */
const ARM = 7;
/** From the cross to the words beside it, on paper. */
const ASIDE: Flat = [14, -12];

/**
 * Marked places: a cross at each, a line between its ends where these lie apart, and its words on a leader. Words that
 * stand at another place already are not said again, since a row of slots meets the next in many places. They keep
 * clear of what is `written` already.
 */
export function drawMarks(
  marks: readonly SceneMark[],
  onPaper: (mark: SceneMark, end: 0 | 1) => Flat,
  written: readonly Patch[] = [],
): readonly Element[] {
  const said = new Set<string>();
  const taken = [...written];
  return marks.map((mark) => {
    const again = said.has(mark.words);
    said.add(mark.words);
    const [from, to] = [onPaper(mark, 0), onPaper(mark, 1)];
    const middle: Flat = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return markOf(mark, 'mark', mark.severity, [
      element('path', { class: 'halo', d: crossAt(from, to, middle) }),
      element('path', { class: 'cross', d: crossAt(from, to, middle) }),
      ...(again ? [] : wordsBeside(mark.words, middle, taken)),
    ]);
  });
}

function crossAt(from: Flat, to: Flat, [x, y]: Flat): string {
  const at = (dx: number, dy: number): string => `${round(x + dx)} ${round(y + dy)}`;
  const line = `M${round(from[0])} ${round(from[1])}L${round(to[0])} ${round(to[1])}`;
  return `${line}M${at(-ARM, -ARM)}L${at(ARM, ARM)}M${at(-ARM, ARM)}L${at(ARM, -ARM)}`;
}

/** Words on a leader, clear of those that are `taken` already. */
function wordsBeside(words: string, [x, y]: Flat, taken: Patch[]): readonly Element[] {
  const left = x + ASIDE[0];
  const at = (base: number): Patch => ({
    left: left - 2,
    right: left + textWidth(words) + 2,
    top: base - TEXT * 0.9,
    bottom: base + TEXT * 0.3,
  });
  // A line up or down, then two, and so on; each word there is can be in the way of two.
  const lines = Array.from({ length: 2 * taken.length + 1 }, (_, i) => (i % 2 === 0 ? -i / 2 : (i + 1) / 2));
  const bases = lines.map((line) => y + ASIDE[1] + line * LINE);
  const base = bases.find((one) => !taken.some((other) => meets(at(one), other))) ?? y + ASIDE[1];
  taken.push(at(base));
  return [
    element('path', { class: 'leader', d: `M${round(x)} ${round(y)}L${round(left)} ${round(base + 2)}` }),
    rectOf('ground', at(base)),
    element('text', { class: 'words', x: round(left), y: round(base) }, words),
  ];
}

const meets = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
