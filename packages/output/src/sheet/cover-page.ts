import type { LengthFormat, SetUp } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import type { PlannedJob } from '../plan/tables.js';
import { minutes, slotsWord, spacerWords, surfaceWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { byText } from '../print/order.js';
import { needed } from '../tables/connectors.js';
import { figure } from './cards.js';
import { changes } from './footer.js';
import { fitted, wrapped } from './metrics.js';
import { MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';

/** Connectors spoilt or lost, in parts of what is needed: common practice, no source. */
const WASTE = 0.05;
/** The cover of a job: what is made, what is used up, which set-ups it takes; as many pages as that fills. */
export function coverPages(job: PlannedJob, paper: Paper, format: LengthFormat): readonly Page[] {
  const title = printText(job.title, format);
  const flow = new Flow(title, paper);
  if (job.errors > 0)
    flow.line(`${job.errors} ${job.errors === 1 ? 'ERROR' : 'ERRORS'} FOUND: DO NOT MILL FROM THESE SHEETS`, 5, true);
  flow.line(`Lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}.`, 3.4);
  flow.heading('Cabinets');
  for (const { result, count } of job.items)
    flow.line(`${count} × ${printText(cabinetLabel(result.fit), format)}`, 4.4);
  flow.heading('Used up');
  for (const { name, count } of connectors(job)) {
    const more = Math.ceil(count * WASTE);
    flow.line(`${count} ${name}, and ${more} more for those that are spoilt: ${count + more}`, 4.2);
  }
  const { plan } = job;
  flow.heading(`Set-ups, in this order: ${minutes(plan.change)} min to change, ${minutes(plan.mill)} min to mill`);
  plan.setUps.forEach((setUp, i) => {
    flow.ticked(setUpWords(setUp, i, format), changes(setUp.changed, setUp.setting, format));
  });
  return flow.pages();
}

function setUpWords(setUp: SetUp, index: number, format: LengthFormat): string {
  const { setting, operations, slots } = setUp;
  const stop = setting.stop ? `stop ${figure(setting.stop, format)}` : 'no stop';
  const pieces = operations.reduce((sum, { count }) => sum + count, 0);
  const what = `${setting.connector} ${figure(setting.depth, format)} deep, ${slotsWord(setUp)} in the ${surfaceWords(setting)}`;
  const lines = setting.pattern ?? 'lines as listed';
  const spacer = printText(spacerWords(setting), format);
  return `${index + 1}.  ${what}, ${lines}, spacer ${spacer}, ${stop}: ${pieces} pieces, ${slots} ${slotsWord(setUp)}`;
}

/** Lines one under the other, on as many pages as they take; the cautions stand at the foot of each. */
class Flow {
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

  heading(text: string): void {
    this.y += 3;
    this.line(text, 5, true);
  }

  line(text: string, size: number, bold = false): void {
    for (const part of wrapped(text, this.inside, size, bold)) {
      this.room(size * 1.35);
      this.pen.text(MARGIN, this.y, part, size, { bold });
      this.y += size * 1.35;
    }
  }

  /** Words with a box to tick before them, and smaller ones under them. */
  ticked(words: string, under: string): void {
    const lines = wrapped(words, this.inside - 8, 3.8);
    this.room(lines.length * 4.6 + 5.6);
    this.pen.box(MARGIN, this.y - 3.6, 4.4, 4.4, 0.4);
    for (const part of lines) {
      this.pen.text(MARGIN + 8, this.y, part, 3.8);
      this.y += 4.6;
    }
    this.pen.text(MARGIN + 8, this.y, under, fitted(under, this.inside - 8, 3.1));
    this.y += 5.6;
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

function connectors(job: PlannedJob): { readonly name: string; readonly count: number }[] {
  const sums = new Map<string, number>();
  for (const item of job.items)
    for (const { connector, each } of needed(item))
      sums.set(connector.name, (sums.get(connector.name) ?? 0) + each * item.count);
  return [...sums].map(([name, count]) => ({ name, count })).sort((a, b) => byText(a.name, b.name));
}
