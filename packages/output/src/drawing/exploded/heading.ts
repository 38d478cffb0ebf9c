import { type Element, element } from '../element.js';
import { TEXT, textWidth } from '../elevation/ink.js';
import type { Scene } from '../scene.js';
import { warningLines } from '../warning.js';

/** From one line of a heading to the next. */
export const HEAD_LINE = 18;

const EDGE = 16;
/** Height of the title's letters. */
const TITLE = 18;
/** How much wider bold letters are. */
const BOLD = 1.2;

/** The lines over the picture: title, overall size, and what stands in the way of making it. */
export function headingOf(scene: Scene, width: number): readonly Element[] {
  const [x, y, z] = scene.outside ?? [];
  const size = x === undefined ? '' : `, ${x} wide, ${z} high, ${y} deep (${scene.units})`;
  const room = width - 2 * EDGE;
  const lines = [
    ...wrapped(`${scene.title}${size}`, room, TITLE).map((words) => ({ kind: 'title', words })),
    ...warningLines(scene).flatMap((line) => wrapped(line, room, TEXT).map((words) => ({ kind: 'warning', words }))),
  ];
  return lines.map(({ kind, words }, i) => {
    const y = 26 + i * HEAD_LINE + (i === 0 ? 0 : 2);
    return element('text', { class: kind, x: EDGE, y }, words);
  });
}

/** Words in lines that are no longer than the room. */
function wrapped(words: string, room: number, size: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && textWidth(longer, size) * BOLD <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
