import type { FittedPart, LengthFormat, Orientation } from '@dryfit/engine';
import { encode } from 'uqr';
import { surfaceName } from '../print/surface.js';
import { figure } from './cards.js';
import { COUNTED, LAID, triangle } from './laid.js';
import { edgeMark, faceMark, markedWays, type Way } from './marks.js';
import { fitted, textWidth, wrapped } from './metrics.js';
import type { Frame, Pen, Spot } from './page.js';

/** What is put on one piece. */
export interface Label {
  readonly job: string;
  readonly cabinet: string;
  /** Which of the cabinets that are alike, from 1, and how many there are. */
  readonly of: readonly [number, number];
  readonly part: FittedPart;
  readonly orientation: Orientation;
  /** Its place among the parts that one triangle is drawn across, from 1; of none, if nothing is milled into it. */
  readonly laid: { readonly place: number; readonly of: number };
  /** What is scanned: job, cabinet, its number and the part, with slashes between. */
  readonly code: string;
  /** Errors found in what the job is made from. */
  readonly errors: number;
}

/** Width of the scannable code with its quiet zone, mm. */
const CODE = 22;
const SMALL = 2.8;
const BOLD = 3.4;
/** What a mark takes before its words, mm. */
const MARK = 5.5;

/** Name, cabinet, job and size; the marks and their words; the code, and under it the piece with its marks where they go. */
export function drawLabel(pen: Pen, label: Label, { x, y, width, height }: Frame, format: LengthFormat): void {
  const { part, job, cabinet, of, code, errors } = label;
  pen.box(x, y, width, height, 0.15);
  const room = width - CODE - 7;
  const left = x + 3;
  pen.text(left, y + 8, part.id, fitted(part.id, room, 6.4, true), { bold: true });
  const from = of[1] > 1 ? `${cabinet}, ${of[0]} of ${of[1]}` : cabinet;
  const what = errors > 0 ? `job ${job}: ERRORS FOUND, DO NOT MILL` : `job ${job}`;
  [from, what, sizeOf(part, format)].forEach((line, i) => {
    pen.text(left, y + 12.2 + i * 3.6, line, fitted(line, room, SMALL));
  });
  drawCode(pen, code, x + width - CODE - 2, y + 2);
  marksInWords(pen, label, [left, y + 24.4], room + 1);
  const sketch = { x: x + width - CODE - 1, y: y + CODE + 3.5, width: CODE - 2, height: height - CODE - 6 };
  drawSketch(pen, label, sketch);
}

const sizeOf = ({ cutSize, material }: FittedPart, format: LengthFormat): string =>
  cutSize
    ? `${[cutSize.length, cutSize.width, cutSize.thickness].map((one) => figure(one, format)).join(' x ')} ${material}`
    : material;

/** Each mark and, beside it, its word and what it says of this piece. */
function marksInWords(pen: Pen, { part, orientation, laid }: Label, [x, top]: Spot, room: number): void {
  const { faces, edges, alongCant } = orientation;
  if (laid.of === 0) {
    pen.text(x, top + 2, 'no slots', BOLD, { bold: true });
    return;
  }
  let y = top;
  const line = (mark: (at: number) => void, word: string, values: readonly string[]) => {
    if (values.length === 0) return;
    const value = values.join(', ');
    mark(y);
    if (values.length === 1 && textWidth(value, BOLD, true) <= room - MARK) {
      pen.text(x + MARK, y, word, 2.4);
      pen.text(x + MARK, y + 3.3, value, BOLD, { bold: true });
      y += 7;
      return;
    }
    const lines = wrapped(`${word}: ${value}`, room - MARK, 2.5, true);
    const shown = lines.length > 3 ? [...lines.slice(0, 2), lines.slice(2).join(' ')] : lines;
    for (const one of shown) {
      pen.text(x + MARK, y, one, fitted(one, room - MARK, 2.5, true), { bold: true });
      y += 2.8;
    }
    y += 1;
  };
  const faceNames = faces.map(({ side }) => surfaceName(part, side));
  const edgeNames = edges.map(({ side }) => surfaceName(part, side));
  if (alongCant.length > 0) edgeNames.push('the cant is marked out');
  line((at) => faceMark(pen, [x + 3.2, at], 'left', 3, 3.2), faces.length > 1 ? 'face sides' : 'face side', faceNames);
  line(
    (at) => edgeMark(pen, [x, at], 'left', 2.4),
    edges.length > 1 ? 'face edges, datums' : 'face edge, datum',
    edgeNames,
  );
}

/**
 * The piece as it is laid to be marked, not to scale: its datum edges hatched, and its share of the triangle. The loop is told
 * in words beside it: so small, and across the triangle, it could not be read.
 */
function drawSketch(pen: Pen, { part, orientation, laid }: Label, { x, y, width, height }: Frame): void {
  if (laid.of === 0) return;
  const words =
    laid.of > 1 ? `triangle: ${laid.place} of ${laid.of} ${COUNTED[part.attitude]}` : 'triangle on it alone';
  pen.text(x + width / 2, y + height, words, fitted(words, width + 2, 2.4), { align: 'middle' });
  const piece = { x: x + 1, y, width: width - 2, height: height - 3 };
  // The hatching of an upper or lower edge keeps clear of it.
  const within = { ...piece, y: piece.y + HATCH, height: piece.height - 2 * HATCH };
  triangle(pen, within, [(laid.place - 1) / laid.of, laid.place / laid.of], 0.45);
  for (const way of markedWays(orientation, LAID[part.attitude])) hatchAlong(pen, piece, way);
  pen.box(piece.x, piece.y, piece.width, piece.height, 0.45);
}

const HATCH = 1.6;

function hatchAlong(pen: Pen, { x, y, width, height }: Frame, way: Way): void {
  if (way === 'left') pen.hatch(x, y, HATCH, height, 1.3);
  else if (way === 'right') pen.hatch(x + width - HATCH, y, HATCH, height, 1.3);
  else pen.hatch(x, way === 'up' ? y : y + height - HATCH, width, HATCH, 1.3);
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
