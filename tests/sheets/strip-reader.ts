import type { Page } from '@dryfit/output';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { SaxesParser } from 'saxes';

/** A straight line on paper, mm from the upper left corner. */
export interface Stroke {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly dashed: boolean;
}

export interface Paper {
  /** mm. */
  readonly size: readonly [width: number, height: number];
  readonly strokes: readonly Stroke[];
  readonly words: readonly string[];
}

/** What is to be printed, before it is written in any form. */
export const onPages = (pages: readonly Page[]): readonly Paper[] =>
  pages.map(({ width, height, marks }) => ({
    size: [width, height],
    strokes: marks.flatMap((mark) => (mark.kind === 'line' ? [{ ...mark, dashed: mark.dash !== undefined }] : [])),
    words: marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  }));

/** The sheets of an HTML document: its drawings are scaled so that a unit is a millimetre, or this throws. */
export function inHtml(html: string): readonly Paper[] {
  return (html.match(/<svg[\s\S]*?<\/svg>/g) ?? []).map((svg) => {
    const strokes: Stroke[] = [];
    const words: string[] = [];
    let size: readonly [number, number] = [0, 0];
    const parser = new SaxesParser();
    parser.on('opentag', ({ name, attributes: a }) => {
      if (name === 'svg') {
        size = [Number.parseFloat(String(a.width)), Number.parseFloat(String(a.height))];
        if (a.width !== `${size[0]}mm` || a.height !== `${size[1]}mm` || a.viewBox !== `0 0 ${size[0]} ${size[1]}`)
          throw new Error(`not in true size: ${svg.slice(0, 200)}`);
      }
      if (name !== 'line') return;
      const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((key) => Number(a[key])) as [
        number,
        number,
        number,
        number,
      ];
      strokes.push({ from: [x1, y1], to: [x2, y2], dashed: a['stroke-dasharray'] !== undefined });
    });
    parser.on('text', (text) => words.push(text));
    parser.write(svg).close();
    return { size, strokes, words };
  });
}

type Matrix = readonly [number, number, number, number, number, number];

/** The sheets of a PDF as another reader draws them: its operators carried out, points taken to millimetres. */
export async function inPdf(bytes: Uint8Array): Promise<readonly Paper[]> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const papers: Paper[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const [, , width = 0, height = 0] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    const { items } = await page.getTextContent();
    papers.push({
      size: [width * MM, height * MM],
      strokes: strokesOf(fnArray, argsArray, height),
      words: items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : [])),
    });
  }
  await document.destroy();
  return papers;
}

const MM = 25.4 / 72;

function strokesOf(operators: readonly number[], operands: readonly unknown[], height: number): readonly Stroke[] {
  const found: Stroke[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  let dashed = false;
  operators.forEach((operator, i) => {
    const args = operands[i];
    if (operator === OPS.save) kept.push(matrix);
    else if (operator === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = times(matrix, args as Matrix);
    else if (operator === OPS.setDash) dashed = (args as [readonly number[], number])[0].length > 0;
    else if (operator === OPS.constructPath && operators.slice(i, i + 4).includes(OPS.stroke)) {
      const [parts, places] = args as [readonly number[], readonly number[]];
      if (parts.join() !== [OPS.moveTo, OPS.lineTo].join()) return;
      const [from, to] = [places.slice(0, 2), places.slice(2, 4)].map(([x = 0, y = 0]) => {
        const [px, py] = [matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5]];
        return [px * MM, (height - py) * MM] as const;
      });
      if (from && to) found.push({ from, to, dashed });
    }
  });
  return found;
}

/** First `b`, then `a`. */
const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
];

/** A strip put together: how long it is, and where its whole and its broken lines lie, from its left end, mm. */
export interface Joined {
  readonly length: number;
  readonly whole: readonly number[];
  readonly broken: readonly number[];
}

/**
 * Cuts the pieces out of printed sheets and glues them as the sheets say: each with its left end on the seam of the one
 * before. Knows nothing of how the sheets were made but what anybody sees: the lines right across a piece are its ends and
 * its seam, those through the height of a row are lines to mill at, shorter ones are ticks. A line that is printed on two
 * pieces is there twice.
 */
export function joined(papers: readonly Paper[]): readonly Joined[] {
  const strips: Joined[] = [];
  let open: { start: number; whole: number[]; broken: number[] } | undefined;
  for (const { strokes } of papers) {
    const upright = strokes.filter(({ from, to }) => Math.abs(from[0] - to[0]) < 1e-6).map(tall);
    const longest = Math.max(...upright.map(({ top, bottom }) => bottom - top));
    const across = upright.filter(({ top, bottom }) => bottom - top > longest * 0.95);
    for (const top of [...new Set(across.map((line) => Math.round(line.top * 100)))].sort((a, b) => a - b)) {
      const own = across.filter((line) => Math.round(line.top * 100) === top).sort((a, b) => a.x - b.x);
      const [left, second, third] = own;
      if (!left || !second) throw new Error('a piece without ends');
      open ??= { start: 0, whole: [], broken: [] };
      for (const line of upright) {
        const height = line.bottom - line.top;
        if (line.top < left.top || line.bottom > left.bottom || height > longest * 0.95 || height < ROW) continue;
        open[line.dashed ? 'broken' : 'whole'].push(open.start + line.x - left.x);
      }
      open.start += second.x - left.x;
      if (third) continue;
      strips.push({ length: open.start, whole: open.whole, broken: open.broken });
      open = undefined;
    }
  }
  return strips;
}

/** Ticks are shorter than this, lines to mill at longer, mm. */
const ROW = 12;

const tall = ({ from, to, dashed }: Stroke) => ({
  x: from[0],
  top: Math.min(from[1], to[1]),
  bottom: Math.max(from[1], to[1]),
  dashed,
});
