import type { LengthFormat, SetUp } from '@dryfit/engine';
import { type CardBlock, cardBlock, drawingWidth } from './card.js';
import type { Card } from './cards.js';
import type { Frame } from './page.js';
import { scalesOf } from './scale.js';

/** White between cards, mm. */
const BETWEEN = 2.6;
/** Most cards that a sheet is tried with. */
const MOST = 8;

/** A card where it stands on its sheet. */
export interface Placed {
  readonly card: Card;
  readonly block: CardBlock;
  readonly frame: Frame;
}

/**
 * The cards, shared out to sheets: as many on each as have room for their drawings, their words and all their pieces. A card
 * whose pieces are too many for a sheet is carried on.
 * @param rooms what each sheet has for its cards
 */
export function shared(
  cards: readonly Card[],
  setUp: SetUp,
  rooms: (sheet: number) => Frame,
  format: LengthFormat,
): readonly (readonly Placed[])[] {
  const split = cards.flatMap((card) => {
    const parts: Card[] = [];
    for (const group of card.groups) {
      const last = parts.at(-1);
      const longer = last && { ...last, groups: [...last.groups, group] };
      if (longer && placed([longer], setUp, rooms(0), format).fits) parts[parts.length - 1] = longer;
      else parts.push({ ...card, groups: [group] });
    }
    return parts;
  });
  const sheets: (readonly Placed[])[] = [];
  for (let at = 0; at < split.length; ) {
    const room = rooms(sheets.length);
    let count = Math.min(MOST, split.length - at);
    let sheet = placed(split.slice(at, at + count), setUp, room, format);
    while (!sheet.fits && count > 1) sheet = placed(split.slice(at, at + --count), setUp, room, format);
    sheets.push(sheet.cards);
    at += count;
  }
  return sheets.length > 0 ? sheets : [[]];
}

/** Cards in rows of two, each row as high as its cards want, and whether they have room. */
function placed(
  cards: readonly Card[],
  setUp: SetUp,
  room: Frame,
  format: LengthFormat,
): { readonly cards: readonly Placed[]; readonly fits: boolean } {
  const columns = cards.length > 1 ? 2 : 1;
  const width = (room.width - BETWEEN * (columns - 1)) / columns;
  const scales = scalesOf(cards, drawingWidth(width));
  const blocks = cards.map((card, i) => cardBlock(card, setUp, width, scales[i] ?? 1, format));
  const places = cards.map((_, i) => placeOf(cards, i, columns));
  const rows = Array.from({ length: Math.ceil(cards.length / columns) }, (_, row) => {
    const own = blocks.filter((_, i) => places[i]?.row === row);
    return {
      least: Math.max(0, ...own.map(({ least }) => least)),
      most: Math.max(0, ...own.map(({ most }) => most)),
    };
  });
  const free = room.height - BETWEEN * (rows.length - 1);
  const heights = grown(rows, free);
  const tops = heights.map((_, i) => room.y + heights.slice(0, i).reduce((sum, one) => sum + one + BETWEEN, 0));
  return {
    fits: rows.reduce((sum, { least }) => sum + least, 0) <= free,
    cards: cards.flatMap((card, i) => {
      const [block, place] = [blocks[i], places[i]];
      if (!block || !place) return [];
      const frame = {
        x: room.x + place.column * (width + BETWEEN),
        y: tops[place.row] ?? room.y,
        width,
        height: heights[place.row] ?? block.least,
      };
      return [{ card, block, frame }];
    }),
  };
}

/** Heights of rows that share what is left over alike, none higher than it has any use for. */
function grown(rows: readonly { readonly least: number; readonly most: number }[], free: number): readonly number[] {
  const heights = rows.map(({ least }) => least);
  for (;;) {
    const left = free - heights.reduce((sum, one) => sum + one, 0);
    const growing = rows.flatMap(({ most }, i) => (most - (heights[i] ?? most) > 0.01 ? [i] : []));
    if (left < 0.01 || growing.length === 0) return heights;
    for (const i of growing) {
      const height = heights[i] ?? 0;
      heights[i] = Math.min(rows[i]?.most ?? height, height + left / growing.length);
    }
  }
}

/** Pieces for the left fence stand on the left and for the right one on the right, as far as there are as many of both. */
function placeOf(
  cards: readonly Card[],
  index: number,
  columns: number,
): { readonly column: number; readonly row: number } {
  const lefts = cards.filter(({ hand }) => hand === 'left').length;
  const rights = cards.length - lefts;
  if (columns === 1) return { column: 0, row: index };
  const before = cards.slice(0, index).filter(({ hand }) => hand === cards[index]?.hand).length;
  if (Math.abs(lefts - rights) > 1) return { column: index % 2, row: Math.floor(index / 2) };
  return { column: cards[index]?.hand === 'left' ? 0 : 1, row: before };
}
