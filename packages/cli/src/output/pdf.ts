import type { Mark, Page } from '@dryfit/output';

/** Points of a PDF in a millimetre: 72 in an inch of 25.4 mm. */
const POINTS = 72 / 25.4;

/**
 * Pages as a PDF, each at its true size. Letters are those that every printer has; a sign that these have not is printed as
 * the nearest one that they have.
 */
export async function sheetsPdf(title: string, pages: readonly Page[]): Promise<Uint8Array> {
  const { default: PDFDocument } = await import('pdfkit');
  const document = new PDFDocument({
    autoFirstPage: false,
    info: { Title: title, Producer: 'Dryfit', Creator: 'Dryfit', CreationDate: new Date(0), ModDate: new Date(0) },
  });
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((done, failed) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', done);
    document.on('error', failed);
  });
  for (const page of pages) {
    document.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
    document.outline.addItem(page.title);
    for (const mark of page.marks) draw(document, mark);
  }
  document.end();
  await ended;
  return Buffer.concat(chunks);
}

function draw(document: PDFKit.PDFDocument, mark: Mark): void {
  if (mark.kind === 'text') {
    text(document, mark);
    return;
  }
  if (mark.kind === 'line') {
    document.lineWidth(mark.width * POINTS);
    if (mark.dash === undefined) document.undash();
    else document.dash(mark.dash * POINTS, { space: mark.dash * POINTS });
    document
      .moveTo(mark.from[0] * POINTS, mark.from[1] * POINTS)
      .lineTo(mark.to[0] * POINTS, mark.to[1] * POINTS)
      .stroke('#000');
    return;
  }
  const { x, y, width, height, pen, grey } = mark;
  document.undash().rect(x * POINTS, y * POINTS, width * POINTS, height * POINTS);
  const level = Math.round(255 * (1 - (grey ?? 0)));
  const fill: [number, number, number] = [level, level, level];
  if (pen <= 0) document.fill(fill);
  else if (grey === undefined) document.lineWidth(pen * POINTS).stroke('#000');
  else document.lineWidth(pen * POINTS).fillAndStroke(fill, '#000');
}

function text(document: PDFKit.PDFDocument, mark: Extract<Mark, { kind: 'text' }>): void {
  const size = mark.size * POINTS;
  document
    .font(mark.bold ? 'Helvetica-Bold' : 'Helvetica')
    .fontSize(size)
    .fillColor('#000');
  const words = printable(mark.text);
  const wide = document.widthOfString(words);
  const back = mark.align === 'middle' ? wide / 2 : mark.align === 'end' ? wide : 0;
  const [x, y] = [mark.x * POINTS, mark.y * POINTS];
  document.save();
  if (mark.upright) document.rotate(-90, { origin: [x, y] });
  document.text(words, x - back, y, { lineBreak: false, baseline: 'alphabetic' });
  document.restore();
}

/** Signs that the standard letters of a PDF lack, and what stands for them. */
const SIGNS: Readonly<Record<string, string>> = { '−': '-', '≈': '~', '″': '"', '′': "'", '≤': '<=', '≥': '>=' };

const printable = (words: string): string => words.replace(/[−≈″′≤≥]/g, (sign) => SIGNS[sign] ?? sign);
