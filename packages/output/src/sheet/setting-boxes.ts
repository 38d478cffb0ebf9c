import { type LengthFormat, Rational, type Setting, type SetUp, sameStack, waitsWithin } from '@dryfit/engine';
import { patternWords, stackWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { type Card, exactly, figure, figures } from './cards.js';
import { fitted, wrapped } from './metrics.js';
import { MARGIN, type Pen } from './page.js';

const GAP = 2.5;
const LARGE = 22.4;
const SMALL = 14;
/** What all of it takes with the white under it, mm. */
export const SETTING_BOXES = LARGE + GAP + SMALL + 1.4;

/** What is set, in large figures: depth, spacer and stop; under these the lines and the base. */
export function settingBoxes(
  pen: Pen,
  top: number,
  inside: number,
  setUp: SetUp,
  cards: readonly Card[],
  format: LengthFormat,
): void {
  const { setting } = setUp;
  const third = (inside - 2 * GAP) / 3;
  const column = (n: number) => MARGIN + n * (third + GAP);
  const depth = [exactly(setting.depth, format), `for ${setting.connector}; cut a test piece in scrap first`];
  large(pen, column(0), top, third, 'DEPTH', figure(setting.depth, format), depth);
  const hasFence = cards.some((card) => card.hasFence);
  const [spacer, ...spacerNotes] = spacerFigure(setUp, hasFence, format);
  large(pen, column(1), top, third, 'SPACER', spacer, spacerNotes);
  const [stop, ...stopNotes] = stopFigure(setting, cards, format);
  large(pen, column(2), top, third, 'STOP', stop, stopNotes);

  const y = top + LARGE + GAP;
  const wide = 2 * third + GAP;
  const pattern =
    setting.pattern === undefined ? '' : ` for these pieces (pattern ${printText(patternWords(setting), format)})`;
  const lost = setting.lines.some((line) => exactly(line, format) !== '');
  const exact = lost ? `; set ${figures(setting.lines, { units: 'mm', decimals: 3 })} mm` : '';
  const from = `, from the ${hasFence ? 'fence' : 'datum'}`;
  // A pattern that is told by all its lines says no more than they do.
  const labels = [`LINES${pattern}${from}${exact}`, `LINES for these pieces${from}${exact}`, `LINES${from}`];
  const label = labels.find((one) => fitted(one, wide - 4, 3.2, true) >= LEAST) ?? '';
  linesBox(pen, MARGIN, y, wide, label, figures(setting.lines, format));
  const base = exactly(setting.base, format);
  small(pen, column(2), y, third, 'BASE TO CENTRE of the slot', figure(setting.base, format), 'middle', base);
}

function spacerFigure(setUp: SetUp, hasFence: boolean, format: LengthFormat): [string, ...string[]] {
  const { beside, setting } = setUp;
  const { spacer } = setting;
  switch (spacer.kind) {
    case 'none':
      return ['none', hasFence ? 'the piece itself goes against the fence' : 'the lines are marked out from the datum'];
    case 'mark out':
      return ['mark out', 'no spacer makes it up: mark out each one'];
    case 'cut': {
      const where =
        beside.length > 0
          ? 'two blocks cut to that width: one at each fence'
          : 'a block cut to that width: between fence and piece';
      return [figure(spacer.width, format), exactly(spacer.width, format), where];
    }
    case 'stock': {
      const sum = Rational.sum(spacer.stack);
      return [figure(sum, format), exactly(sum, format), madeOf(setUp, spacer.stack, format)];
    }
  }
}

/** What a width is made up of, and at which fence it stands. */
function madeOf(setUp: SetUp, stack: readonly Rational[], format: LengthFormat): string {
  const { spacers } = setUp;
  const own =
    stack.length > 1 ? `${stackFigures(stack, format)}, the shop's spacers` : "the shop's spacer of that width";
  if (spacers?.fences === 'in turn')
    return `${own}: ${waitsWithin(setUp) ? 'from fence to fence' : 'left fence first, then the right'}`;
  if (spacers?.fences !== 'both') return `${own}: between fence and piece`;
  return sameStack(spacers.left, spacers.right)
    ? `${own}: the same at each fence`
    : `${stackFigures(spacers.left, format)} at the left fence, ${stackFigures(spacers.right, format)} at the right`;
}

/** Spacers are told by what is written on them: millimetres, whatever the sheet is in, where inches would be rounded. */
function stackFigures(stack: readonly Rational[], format: LengthFormat): string {
  const isExact = stack.every((piece) => exactly(piece, format) === '');
  return isExact ? printText(stackWords(stack), format) : `${printText(stackWords(stack), { units: 'mm' })} mm`;
}

function stopFigure({ base, stop }: Setting, cards: readonly Card[], format: LengthFormat): [string, ...string[]] {
  if (!stop) return ['none', 'no stop in this set-up'];
  const ends = [...new Set(cards.flatMap(({ stopEnd }) => stopEnd ?? []))];
  const end = `the ${ends.join(' or the ') || 'end'}`;
  const comesTo = (at: Rational) =>
    `base ${figure(at, format)} from ${end}, middle of the slots ${figure(at.add(base), format)}`;
  const blocks = cards.flatMap(({ operation: { half } }) => half.stop?.block ?? []);
  const [block] = blocks;
  const isOne = blocks.length === cards.length && blocks.every(({ width }) => block?.width.equals(width));
  if (block && isOne)
    return [
      figure(stop, format),
      exactly(stop, format),
      `less the block ${figure(block.width, format)}: ${comesTo(stop.sub(block.width))}`,
    ];
  const others = block ? '; less where a block lies at the stop' : '';
  return [figure(stop, format), exactly(stop, format), `${comesTo(stop)}${others}`];
}

function large(
  pen: Pen,
  x: number,
  y: number,
  width: number,
  label: string,
  value: string,
  notes: readonly string[],
): void {
  pen.box(x, y, width, LARGE, 0.9);
  pen.text(x + 2, y + 4.6, label, 3.6, { bold: true });
  const note = notes.filter((one) => one !== '').join('; ');
  const [two, three] = [wrapped(note, width - 4, 3), wrapped(note, width - 4, 2.7)];
  // What has no room on two lines stands on more, under a figure that is a little smaller.
  const [lines, size, step] = two.length <= 2 ? [two, 3, 3.4] : [three, 2.7, 2.9];
  const first = y + LARGE - 1.1 - (Math.max(2, lines.length) - 1) * step;
  const largest = lines.length > 2 ? 10 : 12;
  pen.text(x + width / 2, first - 3.2, value, fitted(value, width - 6, largest, true), { bold: true, align: 'middle' });
  for (const [i, line] of lines.entries()) pen.text(x + 2, first + i * step, line, size);
}

/** The lines in one large row, or in as many as can be read where they are many. */
function linesBox(pen: Pen, x: number, y: number, width: number, label: string, value: string): void {
  if (fitted(value, width - 6, 8.4, true) >= ROW) {
    small(pen, x, y, width, label, value, 'start');
    return;
  }
  pen.box(x, y, width, SMALL, 0.5);
  pen.text(x + 2, y + 3.6, label, fitted(label, width - 4, 3, true), { bold: true });
  const size = [ROW, 4, 3.6, 3.2].find((one) => fitsRows(value, width, one)) ?? 3.2;
  wrapped(value, width - 4, size, true).forEach((line, i) => {
    pen.text(x + 2, y + 4.2 + (i + 1) * size * LINE, line, size, { bold: true });
  });
}

const ROW = 4.4;
const LINE = 1.06;
/** Smallest type of a label, mm. */
const LEAST = 2.6;

/** Whether figures of a size stand under the label of their box. */
const fitsRows = (value: string, width: number, size: number): boolean =>
  4.2 + wrapped(value, width - 4, size, true).length * size * LINE <= SMALL - 0.6;

function small(
  pen: Pen,
  x: number,
  y: number,
  width: number,
  label: string,
  value: string,
  align: 'start' | 'middle',
  note = '',
): void {
  pen.box(x, y, width, SMALL, 0.5);
  pen.text(x + 2, y + 4, label, fitted(label, width - 4, 3.2, true), { bold: true });
  const size = fitted(value, width - 6, note === '' ? 8.4 : 6, true);
  pen.text(align === 'start' ? x + 2 : x + width / 2, note === '' ? y + 11.8 : y + 9.6, value, size, {
    bold: true,
    align,
  });
  pen.text(x + 2, y + 13, note, fitted(note, width - 4, 3));
}
