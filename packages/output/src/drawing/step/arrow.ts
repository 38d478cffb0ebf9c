import { type Element, element } from '../element.js';
import { rectOf, round, TEXT, textWidth } from '../elevation/ink.js';
import type { Flat } from '../exploded/view.js';

/** Length of an arrow's head and half its width, on paper. */
const HEAD = 15;
const HALF = 6;
/** From an arrow to its words. */
const GAP = 7;
/** Shorter than this an arrow would be all head. */
const LEAST = 24;

/** An arrow on paper, with its words beside its tail unless they have been said. */
export function arrow(from: Flat, to: Flat, words: string | undefined): Element {
  const [tail, tip] = stretched(from, to);
  const length = Math.hypot(tip[0] - tail[0], tip[1] - tail[1]);
  const [ux, uy] = [(tip[0] - tail[0]) / length, (tip[1] - tail[1]) / length];
  const neck: Flat = [tip[0] - ux * HEAD, tip[1] - uy * HEAD];
  const line = `M${at(tail)}L${at(neck)}`;
  const head = `M${at(tip)}L${at([neck[0] - uy * HALF, neck[1] + ux * HALF])}L${at([neck[0] + uy * HALF, neck[1] - ux * HALF])}Z`;
  return element(
    'g',
    { class: 'way' },
    element('path', { class: 'halo', d: `${line}${head}` }),
    element('path', { class: 'shaft', d: line }),
    element('path', { class: 'head', d: head }),
    ...(words === undefined ? [] : wordsAt(words, tail, tip)),
  );
}

const at = ([x, y]: Flat): string => `${round(x)} ${round(y)}`;

/** An arrow that is seen nearly end on is drawn long enough to have a head. */
function stretched(from: Flat, to: Flat): readonly [Flat, Flat] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length >= LEAST) return [from, to];
  const [ux, uy] = length < 1e-6 ? [0, 1] : [dx / length, dy / length];
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return [
    [mx - (ux * LEAST) / 2, my - (uy * LEAST) / 2],
    [mx + (ux * LEAST) / 2, my + (uy * LEAST) / 2],
  ];
}

/** Above an arrow across the sheet, else behind its tail; on a ground of their own. */
function wordsAt(words: string, tail: Flat, tip: Flat): readonly Element[] {
  const wide = textWidth(words);
  const level = Math.abs(tip[0] - tail[0]) > Math.abs(tip[1] - tail[1]) / 2;
  const left = (level ? (tail[0] + tip[0]) / 2 : tail[0]) - wide / 2;
  const behind = tip[1] > tail[1] ? tail[1] - GAP : tail[1] + GAP + TEXT;
  const base = level ? Math.min(tail[1], tip[1]) - GAP : behind;
  const ground = { left: left - 3, right: left + wide + 3, top: base - TEXT, bottom: base + TEXT * 0.35 };
  return [
    rectOf('ground', ground),
    element('text', { class: 'words', x: round(left + wide / 2), y: round(base), 'text-anchor': 'middle' }, words),
  ];
}
