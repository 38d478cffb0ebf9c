import { type Element, element } from './element.js';
import { rectOf, round, TEXT, textWidth } from './elevation/ink.js';
import type { Flat } from './exploded/view.js';
import type { SceneMark } from './scene.js';
import { markOf } from './shape.js';

/** Half the size of the cross at a marked place, on paper. */
const ARM = 7;
/** From the cross to the words beside it, on paper. */
const ASIDE: Flat = [14, -12];

/**
 * Marked places: a cross at each, a line between its ends where these lie apart, and its words on a leader. Words that
 * stand at another place already are not said again, since a row of slots meets the next in many places.
 */
export function drawMarks(
  marks: readonly SceneMark[],
  onPaper: (mark: SceneMark, end: 0 | 1) => Flat,
): readonly Element[] {
  const said = new Set<string>();
  return marks.map((mark) => {
    const again = said.has(mark.words);
    said.add(mark.words);
    const [from, to] = [onPaper(mark, 0), onPaper(mark, 1)];
    const middle: Flat = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return markOf(mark, 'mark', mark.severity, [
      element('path', { class: 'halo', d: crossAt(from, to, middle) }),
      element('path', { class: 'cross', d: crossAt(from, to, middle) }),
      ...(again ? [] : wordsBeside(mark.words, middle)),
    ]);
  });
}

function crossAt(from: Flat, to: Flat, [x, y]: Flat): string {
  const at = (dx: number, dy: number): string => `${round(x + dx)} ${round(y + dy)}`;
  const line = `M${round(from[0])} ${round(from[1])}L${round(to[0])} ${round(to[1])}`;
  return `${line}M${at(-ARM, -ARM)}L${at(ARM, ARM)}M${at(-ARM, ARM)}L${at(ARM, -ARM)}`;
}

function wordsBeside(words: string, [x, y]: Flat): readonly Element[] {
  const [left, base] = [x + ASIDE[0], y + ASIDE[1]];
  const patch = {
    left: left - 2,
    right: left + textWidth(words) + 2,
    top: base - TEXT * 0.9,
    bottom: base + TEXT * 0.3,
  };
  return [
    element('path', { class: 'leader', d: `M${round(x)} ${round(y)}L${round(left)} ${round(base + 2)}` }),
    rectOf('ground', patch),
    element('text', { class: 'words', x: round(left), y: round(base) }, words),
  ];
}
