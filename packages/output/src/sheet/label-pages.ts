import type { FittedPart, LengthFormat, Side } from '@dryfit/engine';
import { encode } from 'uqr';
import { cabinetLabel, type Item } from '../batch.js';
import { cabinetId } from '../fit-json/fit-json.js';
import { printText } from '../print/length.js';
import { byPart, byText } from '../print/order.js';
import { surfaceName } from '../print/surface.js';
import { figure } from './cards.js';
import { fitted } from './metrics.js';
import { PAPERS, type Page, type Paper, Pen } from './page.js';

/** Labels across and down a sheet, and how far they stay from its edges, mm. */
const ACROSS = 3;
const DOWN = 8;
const EDGE = 8;
const CODE = 22;

/** What is put on one piece. */
interface Label {
  readonly job: string;
  readonly cabinet: string;
  /** Which of the cabinets that are alike, from 1, and how many there are. */
  readonly of: readonly [number, number];
  readonly part: FittedPart;
  /** What is scanned: job, cabinet, its number and the part, with slashes between. */
  readonly code: string;
  /** Edges and ends that slots are measured from. */
  readonly datums: readonly string[];
}

/** A label for every piece of a job, cabinet by cabinet: name, job, size, datum edges, and a code that carries the part's id. */
export function labelPages(
  job: { readonly name: string; readonly items: readonly Item[] },
  paper: Paper,
  format: LengthFormat,
): readonly Page[] {
  const labels = job.items.flatMap((item) => labelsOf(job.name, item, format));
  const pages: Page[] = [];
  for (let from = 0; from < labels.length; from += ACROSS * DOWN)
    pages.push(page(labels.slice(from, from + ACROSS * DOWN), `Labels of job ${job.name}`, paper, format));
  return pages;
}

/** What the code of a label says. */
export const labelCode = (job: string, result: Item['result'], copy: number, part: string): string =>
  [job, cabinetId(result), String(copy), part].join('/');

function labelsOf(job: string, { result, count }: Item, format: LengthFormat): Label[] {
  const { fit } = result;
  const cabinet = printText(cabinetLabel(fit), format);
  const datums = new Map<string, Set<Side>>();
  for (const { halves } of fit.joints)
    for (const { part, datum, slots } of halves)
      if (slots.length > 0) datums.set(part, new Set([...(datums.get(part) ?? []), datum]));
  const parts = [...fit.parts].sort(byPart);
  return Array.from({ length: count }, (_, copy) =>
    parts.map((part): Label => {
      const own = [...(datums.get(part.id) ?? [])].map((side) => surfaceName(part, side)).sort(byText);
      const code = labelCode(job, result, copy + 1, part.id);
      return { job, cabinet, of: [copy + 1, count], part, code, datums: own };
    }),
  ).flat();
}

function page(labels: readonly Label[], title: string, paper: Paper, format: LengthFormat): Page {
  const [width, height] = PAPERS[paper];
  const pen = new Pen();
  const [wide, tall] = [(width - 2 * EDGE) / ACROSS, (height - 2 * EDGE) / DOWN];
  labels.forEach((label, i) => {
    draw(pen, label, EDGE + (i % ACROSS) * wide, EDGE + Math.floor(i / ACROSS) * tall, wide, tall, format);
  });
  return { width, height, title, marks: pen.marks };
}

function draw(pen: Pen, label: Label, x: number, y: number, wide: number, tall: number, format: LengthFormat): void {
  const { part, job, cabinet, of, datums, code } = label;
  pen.box(x, y, wide, tall, 0.15);
  const room = wide - CODE - 7;
  const left = x + 3;
  pen.text(left, y + 8, part.id, fitted(part.id, room, 6.4, true), { bold: true });
  const from = of[1] > 1 ? `${cabinet}, ${of[0]} of ${of[1]}` : cabinet;
  pen.text(left, y + 12.6, from, fitted(from, room, 3));
  const what = `job ${job}`;
  pen.text(left, y + 16.4, what, fitted(what, room, 3));
  const { cutSize } = part;
  const size = cutSize
    ? `${[cutSize.length, cutSize.width, cutSize.thickness].map((one) => figure(one, format)).join(' x ')} ${part.material}`
    : part.material;
  pen.text(left, y + 20.2, size, fitted(size, room, 3));
  const datum = datums.length === 0 ? 'no slots' : `datum: ${datums.join(', ')}`;
  pen.text(left, y + tall - 6.4, datum, fitted(datum, wide - 6, 3.8, true), { bold: true });
  if (datums.length > 0) pen.hatch(left, y + tall - 5, wide - 6, 2.4);
  drawCode(pen, code, x + wide - CODE - 2, y + 2);
}

/** A QR code (ISO/IEC 18004) with its quiet zone, as strokes of modules. */
function drawCode(pen: Pen, code: string, x: number, y: number): void {
  const { data, size } = encode(code, { ecc: 'M', border: 2 });
  const module = CODE / size;
  data.forEach((row, j) => {
    for (let i = 0; i < row.length; i++) {
      if (!row[i]) continue;
      let end = i;
      while (row[end + 1]) end++;
      pen.box(x + i * module, y + j * module, (end - i + 1) * module, module, 0, 1);
      i = end;
    }
  });
}
