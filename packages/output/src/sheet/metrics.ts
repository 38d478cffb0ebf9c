/**
 * Widths of the letters of Helvetica from the space to the tilde, thousandths of the type's height: the published metrics of
 * the standard fonts of PostScript and PDF. Others are taken to be as wide as a digit.
 */
const PLAIN =
  '278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 278 278 584 584 584 556 1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 278 278 278 469 556 333 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500 500 334 260 334 584';
const BOLD =
  '278 333 474 556 556 889 722 238 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 333 333 584 584 584 611 975 722 722 722 722 667 611 778 722 278 556 722 611 833 722 778 667 778 722 667 611 722 667 944 667 667 611 333 278 333 584 556 333 556 611 556 611 556 333 611 611 278 278 556 278 889 611 611 611 611 389 556 333 611 556 778 556 556 500 389 280 389 584';

const widths = (list: string): readonly number[] => list.split(' ').map(Number);
const [plain, bold] = [widths(PLAIN), widths(BOLD)];

/** How wide a text is set, mm, at a height of type in mm. */
export function textWidth(text: string, size: number, isBold = false): number {
  const table = isBold ? bold : plain;
  let sum = 0;
  for (const letter of text) sum += table[(letter.codePointAt(0) ?? 32) - 32] ?? 556;
  return (sum / 1000) * size;
}

/** A text in lines no wider than told, broken at spaces, though not within "14 5/32". */
export function wrapped(text: string, width: number, size: number, isBold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/(?<!\d)\s+|\s+(?!\d+\/\d)/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, isBold) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** The largest height of type, up to `size`, at which a text fits a width. */
export function fitted(text: string, width: number, size: number, isBold = false): number {
  const wide = textWidth(text, size, isBold);
  return wide <= width ? size : (size * width) / wide;
}
