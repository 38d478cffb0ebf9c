import { textWidth } from './metrics.js';
import type { Pen } from './page.js';
import { FIGURE } from './piece-words.js';

/** A line over a piece: its figure, and where it stands. */
export interface LineFigure {
  readonly x: number;
  readonly text: string;
}

/** White between figures; such as have white in themselves want more of it. */
const BETWEEN = { whole: 2.2, fraction: 4 } as const;

const wideOf = (text: string): number =>
  textWidth(text, FIGURE, true) + (text.includes(' ') ? BETWEEN.fraction : BETWEEN.whole);
/** What the figures of a level take, mm. */
const LEVEL = 3.8;
/** Between the figures and the piece: where leaders bend. */
const LEADER = 3;

/** How the figures of lines are written over a piece: level, or upright where they stand too close together. */
export interface LineFigures {
  readonly height: number;
  /** @param y the upper edge of the piece */
  draw(pen: Pen, y: number): void;
}

/**
 * Figures of lines, each over its own line or led to it, none smaller than the others and none on another.
 * @param span between which places they may stand
 */
export function lineFigures(lines: readonly LineFigure[], [left, right]: readonly [number, number]): LineFigures {
  const sorted = [...lines].sort((a, b) => a.x - b.x);
  const widest = Math.max(0, ...sorted.map(({ text }) => textWidth(text, FIGURE, true)));
  const level = spread(
    sorted.map(({ x, text }) => ({ x, wide: wideOf(text) })),
    left,
    right,
  );
  const own = (places: readonly number[]) => places.every((x, i) => Math.abs(x - (sorted[i]?.x ?? 0)) < 0.05);
  if (level?.every((x, i) => Math.abs(x - (sorted[i]?.x ?? 0)) < widest)) {
    const led = own(level) ? 1 : LEADER;
    return {
      height: LEVEL + led,
      draw(pen, y) {
        sorted.forEach(({ x, text }, i) => {
          const at = level[i] ?? x;
          pen.text(at, y - led - 0.6, text, FIGURE, { align: 'middle', bold: true });
          if (led === LEADER) pen.line([at, y - led + 0.2], [x, y], 0.25);
        });
      },
    };
  }
  // Of more lines than there is room for only some have their figures; the large ones on the sheet are of all.
  const most = Math.max(1, Math.floor((right - left) / UPRIGHT));
  const every = Math.ceil(sorted.length / most);
  const told = sorted.filter((_, i) => i % every === 0);
  const places = spread(
    told.map(({ x }) => ({ x, wide: UPRIGHT })),
    left,
    right,
  );
  return {
    height: widest + LEADER + 1,
    draw(pen, y) {
      told.forEach(({ x, text }, i) => {
        const at = places?.[i] ?? x;
        const wide = textWidth(text, FIGURE, true);
        pen.text(at + FIGURE * 0.36, y - LEADER - 0.4 - wide / 2, text, FIGURE, {
          align: 'middle',
          bold: true,
          upright: true,
        });
        pen.line([at, y - LEADER], [x, y], 0.25);
      });
    },
  };
}

const UPRIGHT = FIGURE + 0.6;

/**
 * Places near those wanted at which nothing overlaps, in the same order and within bounds; undefined if there is no room.
 * Those that would overlap are pushed on from the left, then back from the right.
 */
export function spread(
  items: readonly { readonly x: number; readonly wide: number }[],
  left: number,
  right: number,
): readonly number[] | undefined {
  if (items.reduce((sum, { wide }) => sum + wide, 0) > right - left) return undefined;
  // Groups of touching items, each standing about the middle of what it wants.
  const groups: { readonly from: number; readonly to: number; start: number; readonly wide: number }[] = [];
  const wanted = (from: number, to: number): number => {
    let [sum, before] = [0, 0];
    for (const { x, wide } of items.slice(from, to)) {
      sum += x - wide / 2 - before;
      before += wide;
    }
    return Math.min(Math.max(sum / (to - from), left), right - before);
  };
  items.forEach(({ wide }, i) => {
    let group = { from: i, to: i + 1, start: wanted(i, i + 1), wide };
    for (let last = groups.at(-1); last && last.start + last.wide > group.start; last = groups.at(-1)) {
      groups.pop();
      group = {
        from: last.from,
        to: group.to,
        start: wanted(last.from, group.to),
        wide: last.wide + group.wide,
      };
    }
    groups.push(group);
  });
  return groups.flatMap(({ from, to, start }) => {
    let at = start;
    return items.slice(from, to).map(({ wide }) => {
      at += wide;
      return at - wide / 2;
    });
  });
}
