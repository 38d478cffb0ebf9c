import { any } from './bases.js';
import type { Slip } from './names.js';

/** A cabinet of a text, and two of its parts. */
function inHand(text: string, random: () => number) {
  const [, cabinet] = /^cabinet (\w+)/m.exec(text) ?? [];
  const names = [...text.matchAll(/^ +part (\w+(?:, \w+)*)/gm)].flatMap(([, list = '']) => list.split(', '));
  const first = any(names, random);
  const next = any(
    names.filter((name) => name !== first),
    random,
  );
  return cabinet === undefined || first === undefined || next === undefined ? undefined : { cabinet, first, next };
}

/** A job that puts parts of a cabinet in order and makes none of it. */
export const strangerInJob: Slip = (text, random) => {
  const own = inHand(text, random);
  if (!own) return undefined;
  const { cabinet, first, next } = own;
  const order =
    random() < 0.5 ? `late ${first} of ${cabinet}` : `mill ${first} of ${cabinet} before ${next} of ${cabinet}`;
  return `${text}\njob Forgotten {\n  ${order}\n}\n`;
};

/** A job in which each of two parts is to be milled before the other. */
export const ordersThatCross: Slip = (text, random) => {
  const own = inHand(text, random);
  if (!own) return undefined;
  const { cabinet, first, next } = own;
  const one = `mill ${first} of ${cabinet} before ${next} of ${cabinet}`;
  const other =
    random() < 0.5 ? `late ${first} of ${cabinet}` : `mill ${next} of ${cabinet} before ${first} of ${cabinet}`;
  return `${text}\njob Crossed {\n  2 of ${cabinet}\n  ${one}\n  ${other}\n}\n`;
};
