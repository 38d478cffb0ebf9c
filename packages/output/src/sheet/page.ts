import { textWidth } from './metrics.js';

/** Something on a printed page; places and sizes in mm, y downward from the top edge. Everything is black on white. */
export type Mark =
  | {
      readonly kind: 'text';
      readonly x: number;
      /** The line the letters stand on. */
      readonly y: number;
      readonly text: string;
      /** Height of the type, mm. */
      readonly size: number;
      readonly bold?: boolean;
      readonly align?: 'start' | 'middle' | 'end';
      /** Reads upward. */
      readonly upright?: boolean;
    }
  | { readonly kind: 'line'; readonly from: Spot; readonly to: Spot; readonly width: number; readonly dash?: number }
  | {
      readonly kind: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly pen: number;
      /** Share of black inside, 0 to 1. */
      readonly grey?: number;
    };

export type Spot = readonly [x: number, y: number];

/** Where something is drawn, mm. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A part of a page: how high it is, and how it is drawn. */
export interface Block {
  readonly height: number;
  draw(pen: Pen, x: number, y: number): void;
}

/** "3 ERRORS FOUND": what stands on every page of something that is not to be made. */
export const errorsFound = (errors: number): string => `${errors} ${errors === 1 ? 'ERROR' : 'ERRORS'} FOUND`;

/** A sheet of paper, and what is printed on it. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** What it is, for those who cannot see it, and for the list of a PDF's pages. */
  readonly title: string;
  readonly marks: readonly Mark[];
}

export type Paper = 'A4' | 'Letter';

/** Width and height, mm: ISO 216, and ANSI/ASME Y14.1 size A. */
export const PAPERS: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  A4: [210, 297],
  Letter: [215.9, 279.4],
};

/** What stays white along every edge, mm. */
export const MARGIN = 12;

/** Collects the marks of a page. */
export class Pen {
  readonly marks: Mark[] = [];

  text(x: number, y: number, text: string, size: number, more: Partial<Extract<Mark, { kind: 'text' }>> = {}): void {
    if (text !== '') this.marks.push({ ...more, kind: 'text', x, y, text, size });
  }

  /** Words on a white ground, so that lines behind them do not strike them out. */
  onGround(
    x: number,
    y: number,
    text: string,
    size: number,
    more: Partial<Extract<Mark, { kind: 'text' }>> = {},
  ): void {
    if (text === '') return;
    const [wide, tall] = [textWidth(text, size, more.bold) + 1.2, size * 1.12];
    const back = more.align === 'middle' ? wide / 2 : more.align === 'end' ? wide - 0.6 : 0.6;
    if (more.upright) this.box(x - size * 0.85, y - wide + 0.6, tall, wide, 0, 0);
    else this.box(x - back, y - size * 0.85, wide, tall, 0, 0);
    this.text(x, y, text, size, more);
  }

  line(from: Spot, to: Spot, width = 0.4, dash?: number): void {
    this.marks.push({ kind: 'line', from, to, width, ...(dash === undefined ? {} : { dash }) });
  }

  box(x: number, y: number, width: number, height: number, pen = 0.4, grey?: number): void {
    this.marks.push({ kind: 'box', x, y, width, height, pen, ...(grey === undefined ? {} : { grey }) });
  }

  /** Slanting strokes within a box: the way a datum edge is marked. */
  hatch(x: number, y: number, width: number, height: number, every = 2.2): void {
    for (let at = -height; at < width; at += every) {
      const [x1, x2] = [Math.max(at, 0), Math.min(at + height, width)];
      if (x2 - x1 < 0.2) continue;
      this.line([x + x1, y + height - (x1 - at)], [x + x2, y + height - (x2 - at)], 0.35);
    }
  }
}
