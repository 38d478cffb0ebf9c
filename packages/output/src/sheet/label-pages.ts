import { type LengthFormat, orientationOf, type PartId } from '@dryfit/engine';
import { cabinetLabel, type Item } from '../batch.js';
import { cabinetId } from '../fit-json/fit-json.js';
import { printText } from '../print/length.js';
import { byPart } from '../print/order.js';
import { drawLabel, type Label } from './label.js';
import { laidRows } from './laid.js';
import { PAPERS, type Page, type Paper, Pen } from './page.js';

/** Labels across and down a sheet, and how far they stay from its edges, mm. */
const ACROSS = 3;
const DOWN = 7;
const EDGE = 8;

/** A job whose pieces get labels: all of them, or of a cabinet only some. */
export interface LabelledJob {
  readonly name: string;
  readonly items: readonly (Item & { readonly only?: ReadonlySet<PartId> | undefined })[];
  /** Errors found in what it is made from; none unless said. */
  readonly errors?: number | undefined;
}

/**
 * A label for every piece of a job, cabinet by cabinet: name, job, size, face side and face edge, the datum, with their
 * marks, and a code that carries the part's id.
 */
export function labelPages(job: LabelledJob, paper: Paper, format: LengthFormat): readonly Page[] {
  const labels = job.items.flatMap((item) => labelsOf(job, item, format));
  const title = `Labels of job ${job.name}`;
  const pages: Page[] = [];
  for (let from = 0; from < labels.length; from += ACROSS * DOWN)
    pages.push(page(labels.slice(from, from + ACROSS * DOWN), title, paper, format));
  return pages;
}

/** The label of one piece alone, of the cabinet of that number among those that are alike, counted from 1. */
export function labelPage(
  job: Omit<LabelledJob, 'items'>,
  item: Item,
  piece: { readonly part: PartId; readonly copy: number },
  paper: Paper,
  format: LengthFormat,
): Page {
  const labels = labelsOf({ ...job, items: [] }, { ...item, only: new Set([piece.part]) }, format);
  return page(labels.slice(piece.copy - 1, piece.copy), `Label of ${piece.part}`, paper, format);
}

/** What the code of a label says. */
export const labelCode = (job: string, result: Item['result'], copy: number, part: string): string =>
  [job, cabinetId(result), String(copy), part].join('/');

function labelsOf(
  { name: job, errors = 0 }: LabelledJob,
  { result, count, only }: LabelledJob['items'][number],
  format: LengthFormat,
): Label[] {
  const { fit } = result;
  const cabinet = printText(cabinetLabel(fit), format);
  const rows = laidRows(fit);
  const labels = [...fit.parts]
    .filter(({ id }) => only === undefined || only.has(id))
    .sort(byPart)
    .map((part) => {
      const row = rows.find((one) => one.some(({ id }) => id === part.id)) ?? [];
      const place = row.findIndex(({ id }) => id === part.id) + 1;
      return { part, orientation: orientationOf(fit, part), laid: { place, of: row.length } };
    });
  return Array.from({ length: count }, (_, copy) =>
    labels.map((label): Label => {
      const code = labelCode(job, result, copy + 1, label.part.id);
      return { ...label, job, cabinet, of: [copy + 1, count], code, errors };
    }),
  ).flat();
}

function page(labels: readonly Label[], title: string, paper: Paper, format: LengthFormat): Page {
  const [width, height] = PAPERS[paper];
  const pen = new Pen();
  const [wide, tall] = [(width - 2 * EDGE) / ACROSS, (height - 2 * EDGE) / DOWN];
  labels.forEach((label, i) => {
    const [x, y] = [EDGE + (i % ACROSS) * wide, EDGE + Math.floor(i / ACROSS) * tall];
    drawLabel(pen, label, { x, y, width: wide, height: tall }, format);
  });
  return { width, height, title, marks: pen.marks };
}
