import { textWidth, wrapped } from './metrics.js';
import type { Frame, Pen } from './page.js';

/** Height of a line, of its type. */
const LINE = 1.16;

/** Words one under the other. */
export interface Words {
  readonly text: string;
  readonly size: number;
  readonly bold?: boolean;
}

/** Where words stand: in the piece if they can, else beside it; smaller or broken anywhere where nothing else is left. */
export function placeOf(
  captions: readonly (readonly Words[])[],
  within: readonly Frame[],
  beside: Frame,
): { readonly place: Frame | undefined; readonly caption: readonly Words[] } {
  for (const frames of [within, [beside]])
    for (const caption of captions) {
      const place = frames.find((one) => fitsIn(caption, one, 1));
      if (place) return { place, caption };
    }
  const caption = captions.at(-1) ?? [];
  return { place: roomiest(caption, [...within, beside]), caption };
}

/** Words in lines that a width takes. */
const linesIn = (words: readonly Words[], width: number, shrink: number): readonly Words[] =>
  words.flatMap(({ text, size, bold = false }) =>
    wrapped(text, width, size * shrink, bold).map((line) => ({ text: line, size: size * shrink, bold })),
  );

const heightOf = (lines: readonly Words[]): number => lines.reduce((sum, { size }) => sum + size * LINE, 0);

/** Whether words stand in a frame with each of them on one line. */
function fitsIn(words: readonly Words[], { width, height }: Frame, shrink: number): boolean {
  return (
    heightOf(words) <= height && words.every(({ text, size, bold }) => textWidth(text, size * shrink, bold) <= width)
  );
}

/** Where words can stand on several lines or smaller; nowhere if there is no such place. */
function roomiest(words: readonly Words[], frames: readonly Frame[]): Frame | undefined {
  return frames.find((frame) => shrinkIn(words, frame) !== undefined);
}

/** How much smaller words are set so that their lines fit a frame; undefined if they cannot be read any more. */
function shrinkIn(words: readonly Words[], { width, height }: Frame): number | undefined {
  return [1, 0.94, 0.88, 0.84].find((shrink) => {
    const lines = linesIn(words, width, shrink);
    return heightOf(lines) <= height && lines.every(({ text, size, bold }) => textWidth(text, size, bold) <= width);
  });
}

export function drawCaption(pen: Pen, words: readonly Words[], frame: Frame): void {
  const lines = linesIn(words, frame.width, shrinkIn(words, frame) ?? 1);
  let y = frame.y + (frame.height - heightOf(lines)) / 2;
  for (const { text, size, bold = false } of lines) {
    pen.onGround(frame.x + frame.width / 2, y + size * 0.86, text, size, { align: 'middle', bold });
    y += size * LINE;
  }
}
