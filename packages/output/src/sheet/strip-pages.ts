import { type Hand, type LengthFormat, Rational, type Strip } from '@dryfit/engine';
import { printLength } from '../print/length.js';
import { fitted, wrapped } from './metrics.js';
import { errorsFound, MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';
import { bodyHeight, drawPiece } from './strip-piece.js';
import { type Body, bodiesOf, type Piece, piecesOf, tickOf } from './strip-pieces.js';

/** From the edge of the paper to a piece of a strip, mm: room for the words along its ends. */
const SIDE = 14;
/** Between pieces that are printed one over the other, mm. */
const GAP = 6;

interface Printed {
  readonly body: Body;
  readonly piece: Piece;
  readonly of: number;
}

/** Which way round the paper is, and what goes on each sheet. */
interface Division {
  readonly width: number;
  readonly height: number;
  readonly head: readonly HeadLine[];
  readonly sheets: readonly (readonly Printed[])[];
  readonly pieces: number;
}

/**
 * A line strip in its true size: as many pieces as it takes, each at an exact place of the strip, with what tells how they are
 * cut out, joined and checked. The paper is turned so that fewest sheets are printed, and of equally few fewest pieces joined.
 * @param errors found in what it is made from; any at all makes every sheet warn
 */
export function stripPages(strip: Strip, paper: Paper, format: LengthFormat, errors = 0): readonly Page[] {
  const [short, long] = PAPERS[paper];
  const ways = [division(strip, [long, short], format, errors), division(strip, [short, long], format, errors)];
  const [best] = ways.sort((a, b) => a.sheets.length - b.sheets.length || a.pieces - b.pieces);
  if (!best) return [];
  return best.sheets.map((sheet, i) => page(strip, best, sheet, [i + 1, best.sheets.length], format));
}

/** "line strip high4 for parts 564 long". */
export function stripTitle({ pattern, part }: Strip, format: LengthFormat): string {
  return `Line strip ${pattern}${part ? ` for parts ${printLength(part, format)} long` : ''}`;
}

function division(
  strip: Strip,
  [width, height]: readonly [number, number],
  format: LengthFormat,
  errors: number,
): Division {
  const usable = Rational.of(Math.floor((width - 2 * SIDE) * 10), 10);
  const printed = bodiesOf(strip).flatMap((body) => {
    const pieces = piecesOf(body, usable, tickOf(format));
    return pieces.map((piece): Printed => ({ body, piece, of: pieces.length }));
  });
  const head = headLines(strip, width - 2 * MARGIN, format, errors);
  const sheets: Printed[][] = [];
  let left = 0;
  for (const one of printed) {
    const tall = bodyHeight(one.body) + GAP;
    if (sheets.length === 0 || tall > left) {
      sheets.push([]);
      left = height - MARGIN - headHeight(head);
    }
    sheets.at(-1)?.push(one);
    left -= tall;
  }
  return { width, height, head, sheets, pieces: printed.length };
}

const TITLE = 9;
const TEXT = 3.3;
const LINE = 4.4;
const RULER = 14;

const headHeight = (head: readonly HeadLine[]): number => MARGIN + TITLE + head.length * LINE + RULER + 4;

interface HeadLine {
  readonly text: string;
  readonly bold: boolean;
}

/** What stands over the pieces of every sheet. */
function headLines(strip: Strip, inside: number, format: LengthFormat, errors: number): readonly HeadLine[] {
  const { bed, hands, near, lines } = strip;
  const said = (length: Rational) => printLength(length, format);
  const told: string[] = [];
  if (errors > 0) told.push(`${errorsFound(errors)} IN THE FILE: DO NOT MILL FROM THIS STRIP.`);
  for (const {
    lines: [one, other],
    apart,
  } of mistaken(near))
    told.push(
      `CAREFUL: lines ${said(one)} and ${said(other)}, each from another fence, lie only ${said(apart)} apart. Read the row, then the line.`,
    );
  for (const [hand, line] of beyond(lines))
    told.push(`The line ${said(line)} from the ${hand} fence is left out: the bed is only ${said(bed ?? line)} long.`);
  told.push(
    bed
      ? `Lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}. The bed is ${said(bed)} from fence to fence: measure it first${hands.length > 1 ? '; the lines of the right fence are right only if it is' : ''}.`
      : `Lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}. No bed is told, so each hand has a strip of its own: lay it against its own fence.`,
    `Cut each piece out at its ends. Lay a steel rule along the ticks and glue piece by piece, so that every ${format.units === 'in' ? 'inch' : 'hundred'} agrees with the rule, not only with the piece before. ${rowsWords(strip)}`,
  );
  return told.flatMap((text) => {
    const bold = /^(CAREFUL|\d+ ERROR)/.test(text);
    return wrapped(text, inside, TEXT, bold).map((line) => ({ text: line, bold }));
  });
}

function rowsWords({ bed, hands }: Strip): string {
  if (hands.length < 2) return '';
  return bed
    ? 'The upper row with whole lines is for pieces at the left fence, the lower row with broken lines and a hatched band for those at the right fence.'
    : 'Whole lines are for pieces at the left fence, broken lines with a hatched band for those at the right fence.';
}

/** Lines that are taken for each other, once each pair: what holds of left and right holds of right and left. */
export function mistaken(
  near: Strip['near'],
): readonly { readonly lines: readonly [Rational, Rational]; readonly apart: Rational }[] {
  const pairs = near.map(({ left, right, apart }) => ({
    lines: (left.le(right) ? [left, right] : [right, left]) as readonly [Rational, Rational],
    apart,
  }));
  return pairs.filter(({ lines }, i) => pairs.findIndex((pair) => String(pair.lines) === String(lines)) === i);
}

const beyond = (lines: Strip['lines']): readonly (readonly [Hand, Rational])[] =>
  lines.filter(({ not }) => not === 'beyond the bed').map(({ hand, fromFence }) => [hand, fromFence] as const);

function page(
  strip: Strip,
  { width, height, head }: Division,
  sheet: readonly Printed[],
  [number, count]: readonly [number, number],
  format: LengthFormat,
): Page {
  const pen = new Pen();
  const inside = width - 2 * MARGIN;
  const title = stripTitle(strip, format);
  pen.text(MARGIN, MARGIN + 6, title, fitted(title, inside * 0.7, 8, true), { bold: true });
  pen.text(width - MARGIN, MARGIN + 6, `page ${number} of ${count}`, 5, { bold: true, align: 'end' });
  let y = MARGIN + TITLE;
  head.forEach(({ text, bold }, i) => {
    pen.text(MARGIN, y + (i + 1) * LINE - 1, text, TEXT, { bold });
  });
  y += head.length * LINE;
  checkRuler(pen, MARGIN + 2, y + 6, inside, format);
  y += RULER + 4;
  for (const { body, piece, of } of sheet) {
    drawPiece(pen, [SIDE, y], strip, body, piece, of, format);
    y += bodyHeight(body) + GAP;
  }
  return { width, height, title: `${title}, page ${number} of ${count}`, marks: pen.marks };
}

/** A length to hold a rule to: 100 mm, or 4 in. */
function checkRuler(pen: Pen, x: number, y: number, inside: number, format: LengthFormat): void {
  const [step, steps, name] = format.units === 'in' ? [25.4, 4, '4 in'] : [10, 10, '100 mm'];
  pen.line([x, y], [x + step * steps, y], 0.3);
  for (let i = 0; i <= steps; i++) {
    const tall = i === 0 || i === steps ? 4 : 2;
    pen.line([x + i * step, y - tall / 2], [x + i * step, y + tall / 2], 0.3);
  }
  const words = `This line measures ${name}. If it does not, do not use the strip: print at 100 %, with no fitting to the page.`;
  wrapped(words, inside - step * steps - 8, TEXT, true).forEach((line, i) => {
    pen.text(x + step * steps + 4, y - 1.2 + i * LINE, line, TEXT, { bold: true });
  });
}
