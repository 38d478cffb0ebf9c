import type { Flat } from '../exploded/view.js';
import { type Ink, LINE, TEXT, textWidth } from './ink.js';
import { type Flank, isLevel } from './look.js';

/** Distances from one zero, all along one line: a running dimension. */
export interface Row {
  /** Where zero lies along the border, on paper. */
  readonly zero: number;
  readonly ticks: readonly Tick[];
  /** What is measured, and from where. */
  readonly title: readonly string[];
  /** A size from end to end, and no distances from a zero. */
  readonly overall?: boolean | undefined;
}

export interface Tick {
  /** Along the border, on paper. */
  readonly at: number;
  readonly label: string;
  /** Where its extension line begins: across the border, outward from the face; less than nothing on the face. */
  readonly from: number;
}

const CLEAR = 6;

/** Which line of figures each label stands in, so that no two in a line touch; the first line that has room. */
export function linesOf(ticks: readonly Tick[], room: (tick: Tick) => number): readonly number[] {
  const ends: number[] = [];
  const order = ticks.map((_, i) => i).sort((a, b) => (ticks[a] as Tick).at - (ticks[b] as Tick).at);
  const lines: number[] = ticks.map(() => 0);
  for (const i of order) {
    const tick = ticks[i] as Tick;
    const half = room(tick) / 2;
    const found = ends.findIndex((end) => end + CLEAR <= tick.at - half);
    const line = found < 0 ? ends.length : found;
    ends[line] = tick.at + half;
    lines[i] = line;
  }
  return lines;
}

/** How far a row reaches out from where it begins. */
export function depthOf(row: Row, flank: Flank): number {
  const lines = linesOf(row.ticks, roomOf(flank));
  const count = Math.max(0, ...lines) + 1;
  const figures = isLevel(flank) ? count * LINE : count * (widestOf(row) + CLEAR);
  return 8 + figures + row.title.length * LINE + 10;
}

const roomOf = (flank: Flank) => (tick: Tick) => (isLevel(flank) ? textWidth(tick.label) : TEXT);
const widestOf = (row: Row): number => Math.max(0, ...row.ticks.map(({ label }) => textWidth(label)));

/** Draws a row that begins `out` from the face, on the paper of which `place` gives each point. */
export function drawRow(ink: Ink, row: Row, flank: Flank, out: number, length: number, place: Place): void {
  const level = isLevel(flank);
  const line = out + 8;
  if (row.overall) {
    drawOverall(ink, row, flank, line, place);
    return;
  }
  const ends = [row.zero, ...row.ticks.map(({ at }) => at)];
  for (const { at, from } of row.ticks) ink.path('extension', [place(at, from), place(at, line + 4)]);
  ink.path('extension', [place(row.zero, 4), place(row.zero, line + 4)]);
  ink.path('dimension', [place(Math.min(...ends), line), place(Math.max(...ends), line)]);
  ink.path('tick', ...row.ticks.map(({ at }) => [place(at - 3, line - 3), place(at + 3, line + 3)]));
  const [cx, cy] = place(row.zero, line);
  ink.add({ tag: 'circle', attributes: { class: 'zero', cx, cy, r: 3.5 }, children: [] });
  const lines = linesOf(row.ticks, roomOf(flank));
  const count = Math.max(0, ...lines) + 1;
  const step = level ? LINE : widestOf(row) + CLEAR;
  row.ticks.forEach(({ at, label }, i) => {
    const far = line + 4 + (lines[i] as number) * step;
    lettered(ink, label, flank, at, far, place);
  });
  const inOrder = flank === 'top' || flank === 'left' ? [...row.title].reverse() : row.title;
  inOrder.forEach((words, i) => {
    const far = line + 4 + count * step + i * LINE;
    titled(ink, words, flank, far, row.zero, length, place);
  });
}

/** From along the border and outward from the face to paper. */
export type Place = (along: number, out: number) => Flat;

/** A figure that begins `far` out. */
function lettered(ink: Ink, words: string, flank: Flank, at: number, far: number, place: Place): void {
  if (isLevel(flank)) {
    const [x, y] = place(at, far + LINE / 2);
    ink.text(words, [x, y + TEXT * 0.35], { anchor: 'middle', kind: 'figure', clear: true });
    return;
  }
  const [x, y] = place(at, far + 2);
  ink.text(words, [x, y + TEXT * 0.35], { anchor: flank === 'left' ? 'end' : 'start', kind: 'figure', clear: true });
}

/** A line of a title, along the border and from the end where zero is. */
function titled(ink: Ink, words: string, flank: Flank, far: number, zero: number, length: number, place: Place): void {
  const first = zero < length / 2;
  if (isLevel(flank)) {
    const [x, y] = place(first ? 0 : length, far + LINE / 2);
    ink.text(words, [x, y + TEXT * 0.35], { anchor: first ? 'start' : 'end', kind: 'said', clear: true });
    return;
  }
  const [x, y] = place(first ? 0 : length, far + LINE / 2);
  ink.text(words, [x + TEXT * 0.35, y], { anchor: first ? 'end' : 'start', kind: 'said', upward: true, clear: true });
}

/** A size from one end to the other, its figure in the middle. */
function drawOverall(ink: Ink, { zero, ticks }: Row, flank: Flank, line: number, place: Place): void {
  for (const { at, label } of ticks) {
    ink.path('extension', [place(zero, 4), place(zero, line + 4)], [place(at, 4), place(at, line + 4)]);
    ink.path('dimension', [place(zero, line), place(at, line)]);
    ink.path('tick', ...[zero, at].map((end) => [place(end - 3, line - 3), place(end + 3, line + 3)]));
    lettered(ink, label, flank, (zero + at) / 2, line + 4, place);
  }
}
