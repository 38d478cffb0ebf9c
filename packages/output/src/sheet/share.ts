import type { LengthFormat, SetUp } from '@dryfit/engine';
import { wordsHeight } from './card.js';
import type { Card } from './cards.js';
import type { Frame } from './page.js';

/** White between cards, mm. */
export const BETWEEN = 4;

/** Width and height of a card where so many stand on a sheet. */
export function cardSize(count: number, room: Frame) {
  const columns = count > 1 ? 2 : 1;
  const rows = Math.ceil(count / columns);
  return {
    columns,
    width: (room.width - BETWEEN * (columns - 1)) / columns,
    height: (room.height - BETWEEN * (rows - 1)) / rows,
  };
}

/** The least that the drawing of a card takes, mm. */
const DRAWING = 32;

/**
 * The cards, shared out to sheets: as many on each as have room for their drawing, their words and all their pieces. A card
 * whose pieces are too many for a sheet is carried on.
 * @param rooms what each sheet has for its cards
 */
export function shared(
  cards: readonly Card[],
  setUp: SetUp,
  rooms: (sheet: number) => Frame,
  format: LengthFormat,
): readonly (readonly Card[])[] {
  const fits = (card: Card, count: number, room: Frame): boolean => {
    const { width, height } = cardSize(count, room);
    return wordsHeight(card, setUp, width, format) + DRAWING <= height;
  };
  const split = cards.flatMap((card) => {
    const parts: Card[] = [];
    for (const group of card.groups) {
      const last = parts.at(-1);
      const longer = last && { ...last, groups: [...last.groups, group] };
      if (longer && fits(longer, 1, rooms(0))) parts[parts.length - 1] = longer;
      else parts.push({ ...card, groups: [group] });
    }
    return parts;
  });
  const shares: Card[][] = [];
  for (let at = 0; at < split.length; ) {
    const room = rooms(shares.length);
    const left = split.length - at;
    const count = [4, 3, 2, 1].find((n) => n <= left && split.slice(at, at + n).every((card) => fits(card, n, room)));
    shares.push(split.slice(at, at + (count ?? 1)));
    at += count ?? 1;
  }
  return shares.length > 0 ? shares : [[]];
}
