import type { LengthFormat } from '@dryfit/engine';
import { cabinetLabel, type Item } from '../batch.js';
import type { PlannedJob } from '../plan/tables.js';
import { printText } from '../print/length.js';
import { laidRows, triangle } from './laid.js';
import { drawLaid, type Laid, measured } from './laid-row.js';
import { edgeMark, faceMark } from './marks.js';
import { fitted, wrapped } from './metrics.js';
import { errorsFound, MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';

/** Between two drawings. */
const GAP = 8;

/** How the parts of each cabinet are laid and marked before anything is milled. */
export function markingPages(
  job: Pick<PlannedJob, 'title' | 'items' | 'errors'>,
  paper: Paper,
  format: LengthFormat,
): readonly Page[] {
  const laying = new Laying(printText(job.title, format), job.errors, paper);
  for (const { heads, item } of alike(job.items, format)) {
    const sets = laid(item, laying.inside);
    if (sets.length > 0) laying.cabinet(heads, sets);
  }
  return laying.pages();
}

/** Cabinets whose parts are marked alike are told once. */
function alike(
  items: readonly Item[],
  format: LengthFormat,
): readonly { readonly heads: string[]; readonly item: Item }[] {
  const found = new Map<string, { heads: string[]; item: Item }>();
  for (const item of items) {
    if (item.count <= 0) continue;
    const { fit } = item.result;
    const told = laid(item, 200).map(({ parts, words }) => [parts.map(({ id }) => id), words]);
    const key = JSON.stringify([fit.name, told]);
    const kept = found.get(key) ?? { heads: [], item };
    kept.heads.push(`${item.count} × ${printText(cabinetLabel(fit), format)}`);
    found.set(key, kept);
  }
  return [...found.values()];
}

const laid = ({ result: { fit } }: Item, inside: number): readonly Laid[] =>
  laidRows(fit).map((row) => measured(fit, row, inside));

/** Drawings beside and under each other, on as many pages as they take. */
class Laying {
  private readonly made: Pen[] = [];
  private readonly width: number;
  private readonly height: number;
  private x = MARGIN;
  private y = 0;
  /** Where the next row of drawings begins. */
  private next = 0;

  constructor(
    private readonly title: string,
    private readonly errors: number,
    paper: Paper,
  ) {
    [this.width, this.height] = PAPERS[paper];
  }

  get inside(): number {
    return this.width - 2 * MARGIN;
  }

  /** The drawings of one cabinet, under its name. */
  cabinet(heads: readonly string[], sets: readonly Laid[]): void {
    const head = heads.join(', ');
    const lines = wrapped(head, this.inside, 5, true);
    const first = Math.max(...sets.slice(0, 1).map(({ height }) => height));
    this.row(lines.length * 6.4 + 4 + first);
    const pen = this.pen;
    for (const line of lines) {
      this.next += 6.4;
      pen.text(MARGIN, this.next, line, 5, { bold: true });
    }
    this.next += 4;
    this.y = this.next;
    for (const set of sets) this.add(set, head);
    this.next += 2;
  }

  pages(): readonly Page[] {
    const { width, height } = this;
    return this.made.map((pen, i) => {
      const sheet = this.made.length > 1 ? `, ${i + 1} of ${this.made.length}` : '';
      return { width, height, title: `${this.title}, how the parts are marked${sheet}`, marks: pen.marks };
    });
  }

  private add(set: Laid, head: string): void {
    if (this.x > MARGIN && this.x + set.width > this.width - MARGIN) {
      this.x = MARGIN;
      this.y = this.next;
    }
    if (this.y + set.height > this.height - MARGIN) {
      this.row(Number.POSITIVE_INFINITY);
      const again = `${head}, continued`;
      this.pen.text(MARGIN, this.next + 6.4, again, fitted(again, this.inside, 5, true), { bold: true });
      this.next += 10.4;
      this.y = this.next;
    }
    drawLaid(this.pen, set, this.x, this.y);
    this.x += set.width + GAP;
    this.next = Math.max(this.next, this.y + set.height);
  }

  private get pen(): Pen {
    return this.made.at(-1) ?? this.turn();
  }

  /** A new row that has so much room below it, mm. */
  private row(height: number): void {
    this.x = MARGIN;
    if (this.made.length === 0 || this.next + height > this.height - MARGIN) this.turn();
    this.y = this.next;
  }

  private turn(): Pen {
    const pen = new Pen();
    this.made.push(pen);
    const heading = `How the parts are marked${this.made.length > 1 ? ', continued' : ''}`;
    pen.text(MARGIN, 22, heading, fitted(heading, this.inside * 0.66, 9, true), { bold: true });
    pen.text(this.width - MARGIN, 22, this.title, fitted(this.title, this.inside * 0.32, 5, true), {
      bold: true,
      align: 'end',
    });
    const warned = this.errors > 0 ? 8 : 0;
    if (this.errors > 0) {
      const warning = `${errorsFound(this.errors)}: DO NOT MILL THESE PARTS`;
      pen.box(MARGIN, 25, this.inside, 7, 0.8);
      pen.text(this.width / 2, 30, warning, 4, { bold: true, align: 'middle' });
    }
    this.x = MARGIN;
    this.next = this.made.length > 1 ? 26 + warned : legend(pen, 30 + warned, this.inside);
    this.y = this.next;
    return pen;
  }
}

/** What each mark is, and how parts are laid; returns where it ends. */
function legend(pen: Pen, top: number, inside: number): number {
  let y = top;
  const line = (text: string, at: number, bold = false) => {
    for (const part of wrapped(text, inside - at, 3.5, bold)) {
      pen.text(MARGIN + at, y, part, 3.5, { bold });
      y += 4.7;
    }
  };
  line('Chalk or pencil these on every part before the first slot is milled. Drawings are not to scale.', 0);
  y += 1.5;
  faceMark(pen, [MARGIN + 6.5, y - 1.2], 'left', 4.4, 6);
  line(
    'Face side: the face that slots are measured from, or that they are in. Where it is the one underneath, it is drawn broken and called hidden.',
    16,
  );
  y += 1;
  edgeMark(pen, [MARGIN + 1, y - 1.2], 'left', 3);
  line(
    'Face edge: the edge or end that goes against the fence, or against the spacer before it. The vee points at it.',
    16,
  );
  y += 1;
  triangle(pen, { x: MARGIN, y: y - 4, width: 11, height: 6 });
  line(
    'Triangle: one for the parts that belong together, laid side by side in the order they stand in, its point away from you. Write the number of the cabinet into it.',
    16,
  );
  y += 1.5;
  line(
    'Uprights lie with their left face up and their top end away from you, level parts with their top face up and their rear edge away, facing parts with their front face up and their top edge away.',
    0,
  );
  return y + 1;
}
