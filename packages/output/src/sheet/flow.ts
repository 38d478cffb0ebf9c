import { MILLING_CAUTIONS } from '../cautions.js';
import { fitted, wrapped } from './metrics.js';
import { MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';

/** How wide a box to tick is, with the white beside it, mm. */
const TICK = 8;
/** How wide the labels of a list are. */
const LABEL = 29;

/** Lines one under the other, on as many pages as they take; the cautions stand at the foot of each. */
export class Flow {
  private readonly made: Pen[] = [];
  private readonly width: number;
  private readonly height: number;
  private readonly cautions: readonly string[];
  private readonly foot: number;
  private y = 0;

  constructor(
    private readonly title: string,
    paper: Paper,
  ) {
    [this.width, this.height] = PAPERS[paper];
    this.cautions = wrapped(MILLING_CAUTIONS.join(' '), this.inside, 3.1);
    this.foot = this.height - MARGIN - this.cautions.length * 3.9 - 4;
    this.turn();
  }

  /** A heading stays on the page of what follows it. */
  heading(text: string): void {
    this.y += 3;
    this.room(22);
    this.line(text, 5, true);
  }

  line(text: string, size: number, bold = false): void {
    for (const part of wrapped(text, this.inside, size, bold)) {
      this.room(size * 1.35);
      this.pen.text(MARGIN, this.y, part, size, { bold });
      this.y += size * 1.35;
    }
  }

  /** Words with a box to tick before them, and smaller ones under them; a label before the words of a list. */
  ticked(words: string, under: string | readonly string[], label?: string): void {
    const left = MARGIN + TICK + (label === undefined ? 0 : LABEL);
    const width = this.width - MARGIN - left;
    const lines = wrapped(words, width, 3.8);
    const below = [under].flat().flatMap((one) => wrapped(one, width, 3.1));
    this.room(lines.length * 4.6 + below.length * 4 + 1);
    this.pen.box(MARGIN, this.y - 3.6, 4.4, 4.4, 0.4);
    if (label) this.pen.text(MARGIN + TICK, this.y, label, fitted(label, LABEL - 2, 3.8, true), { bold: true });
    for (const part of lines) {
      this.pen.text(left, this.y, part, 3.8);
      this.y += 4.6;
    }
    for (const part of below) {
      this.pen.text(left, this.y - 0.4, part, 3.1);
      this.y += 4;
    }
    this.y += 1.4;
  }

  pages(): readonly Page[] {
    return this.made.map((pen, i) => {
      const sheet = this.made.length > 1 ? `, cover ${i + 1} of ${this.made.length}` : '';
      return { width: this.width, height: this.height, title: `${this.title}${sheet}`, marks: pen.marks };
    });
  }

  private get inside(): number {
    return this.width - 2 * MARGIN;
  }

  private get pen(): Pen {
    return this.made.at(-1) ?? this.turn();
  }

  private room(height: number): void {
    if (this.y + height > this.foot) this.turn();
  }

  private turn(): Pen {
    const pen = new Pen();
    this.made.push(pen);
    const heading = this.made.length === 1 ? this.title : `${this.title}, continued`;
    pen.text(MARGIN, 24, heading, fitted(heading, this.inside, 11, true), { bold: true });
    for (const [i, text] of this.cautions.entries()) pen.text(MARGIN, this.foot + 4 + (i + 1) * 3.9, text, 3.1);
    this.y = 33;
    return pen;
  }
}
