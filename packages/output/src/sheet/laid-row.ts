import { type FittedPart, type Orientation, orientationOf } from '@dryfit/engine';
import type { Item } from '../batch.js';
import { partNames } from '../print/order.js';
import { IN_ORDER, LAID, ratioOf, triangle } from './laid.js';
import {
  MARKS_BESIDE,
  MARKS_DOWN,
  markedWays,
  orientationMarks,
  orientationWords,
  type Seen,
  type Way,
} from './marks.js';
import { fitted, wrapped } from './metrics.js';
import type { Pen } from './page.js';

/** Parts that one triangle is drawn across, as they are drawn side by side. */
export interface Laid {
  readonly parts: readonly FittedPart[];
  /** Of each of them. */
  readonly marks: readonly Orientation[];
  /** What the marks take over and under the triangle, mm. */
  readonly zones: Zones;
  /** Which parts have their slots measured from what. */
  readonly words: readonly string[];
  /** Of the drawing of each part, mm. */
  readonly wide: number;
  readonly tall: number;
  /** Of all of it. */
  readonly width: number;
  readonly height: number;
}

/** Least width at which a part has room for its marks and their words, and least height of a triangle, mm. */
const LEAST = 35;
const TRIANGLE = 20;
const SIDE = 42;
const WORDS = 3.3;
const LINE = 4.3;
/** Over a drawing: what is away from you. */
const OVER = 5;

type Marked = Item['result']['fit'];

const wordsOf = (fit: Marked, part: FittedPart): string =>
  orientationWords(fit, part, orientationOf(fit, part)).join('; ');

/** How large the drawing of a row of parts is, and what is said under it. */
export function measured(fit: Marked, parts: readonly FittedPart[], inside: number): Laid {
  const [first] = parts;
  const along = first && ratioOf(first);
  const ratio = Math.min(1.6, Math.max(0.6, along ?? 1));
  const marks = parts.map((part) => orientationOf(fit, part));
  const zones = zonesOf(marks, first && LAID[first.attitude]);
  const wide = Math.max(LEAST, Math.min(SIDE * Math.sqrt(ratio), inside / parts.length));
  const tall = Math.max(zones.over + zones.beside + zones.under + TRIANGLE, SIDE / Math.sqrt(ratio));
  const width = Math.max(wide * parts.length, Math.min(inside, 56));
  const groups = new Map<string, FittedPart[]>();
  for (const part of parts) {
    const words = wordsOf(fit, part) || 'no slots, so neither face side nor face edge';
    groups.set(words, [...(groups.get(words) ?? []), part]);
  }
  const words = [...groups].flatMap(([words, own]) => wrapped(`${partNames(own)}: ${words}`, width, WORDS));
  return { parts, marks, zones, words, wide, tall, width, height: OVER + tall + 4.6 + words.length * LINE + 3 };
}

interface Zones {
  /** For marks at upper edges, then for those at left and right ones, and for those at lower edges. */
  readonly over: number;
  readonly beside: number;
  readonly under: number;
}

function zonesOf(marks: readonly Orientation[], seen: Seen | undefined): Zones {
  const ways = seen ? marks.map((one) => markedWays(one, seen)) : [];
  const has = (way: Way) => ways.some((own) => own.includes(way));
  const down = (way: Way) =>
    has(way) ? (ways.some(([first]) => first === way) ? MARKS_DOWN.both : MARKS_DOWN.edge) : 0;
  return { over: down('up'), beside: has('left') || has('right') ? MARKS_BESIDE : 0, under: down('down') };
}

/** The parts of a row beside each other under one triangle, each with its marks and name, and under them the words. */
export function drawLaid(pen: Pen, { parts, marks, zones, words, wide, tall }: Laid, x: number, y: number): void {
  const [first] = parts;
  if (!first) return;
  const seen = LAID[first.attitude];
  const away = `${seen.edges.up} away from you${parts.length > 1 ? `; ${IN_ORDER[first.attitude]}` : ''}`;
  const width = wide * parts.length;
  pen.text(x, y + 3.4, away, fitted(away, Math.max(width, 56), 3.1));
  const top = y + OVER;
  const over = zones.over + zones.beside;
  const within = tall - over - zones.under;
  triangle(pen, { x, y: top + over, width, height: within });
  parts.forEach((part, i) => {
    const piece = { x: x + i * wide, y: top, width: wide, height: tall };
    pen.box(piece.x, piece.y, wide, tall, 0.6);
    pen.text(piece.x + wide / 2, top + tall + 4, part.id, fitted(part.id, wide - 2, 4, true), {
      bold: true,
      align: 'middle',
    });
  });
  pen.onGround(x + wide / 2, top + over + within * 0.9 + 0.8, 'triangle', 2.6, { align: 'middle' });
  parts.forEach((_, i) => {
    const own = marks[i];
    const beside = (zones.over + zones.beside / 2) / tall;
    const middle = { left: beside, right: beside };
    if (own) orientationMarks(pen, { x: x + i * wide, y: top, width: wide, height: tall }, own, seen, middle);
  });
  words.forEach((line, i) => {
    pen.text(x, top + tall + 4.6 + (i + 0.8) * LINE, line, WORDS);
  });
}
