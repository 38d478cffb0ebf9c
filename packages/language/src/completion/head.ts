import { SIDES, type Side, type Verb } from '@dryfit/engine';

/** A part as a statement names it, perhaps with a side. */
export interface Named {
  readonly name: string;
  readonly number?: string | undefined;
  readonly side?: Side | undefined;
}

/** The head of a joint, as far as it is written. */
export interface Head {
  readonly verb: Verb;
  readonly entering: readonly Named[];
  /** Two ends each, or one where the other is not written yet. */
  readonly pairs: readonly (readonly Named[])[];
  readonly to: readonly Named[];
}

const VERBS: readonly string[] = ['butt', 'mitre', 'groove', 'rebate', 'house', 'rest'] satisfies Verb[];

export const isSide = (word: string | undefined): word is Side =>
  (SIDES as readonly (string | undefined)[]).includes(word);

/** Reads the words of a joint's head; undefined for any other statement. */
export function readHead(words: readonly string[]): Head | undefined {
  const [verb, ...rest] = words;
  if (verb === undefined || !VERBS.includes(verb)) return undefined;
  // A part may well be called `to`: the word that counts is the one behind a part.
  const split = rest.findIndex((word, index) => index > 0 && (word === 'between' || word === 'to'));
  const [before, after] = split < 0 ? [rest, []] : [rest.slice(0, split), rest.slice(split + 1)];
  const entering = named(before);
  const listed = separate(after, ',');
  const between = rest[split] === 'between';
  return {
    verb: verb as Verb,
    entering,
    pairs: between ? listed.map((pair) => separate(pair, 'and').flatMap(named)) : [],
    to: between ? [] : listed.flatMap(named),
  };
}

/** `lh`, `lshelf 2.top`, `a, b`. */
function named(words: readonly string[]): Named[] {
  return separate(words, ',').flatMap((one) => {
    const [name, ...rest] = one;
    if (name === undefined) return [];
    const number = rest[0] !== undefined && /^\d+$/.test(rest[0]) ? rest[0] : undefined;
    const side = rest.at(-1);
    return [{ name, number, side: rest.includes('.') && isSide(side) ? side : undefined }];
  });
}

function separate(words: readonly string[], by: string): readonly (readonly string[])[] {
  const lists: string[][] = [[]];
  for (const word of words) {
    if (word === by) lists.push([]);
    else lists.at(-1)?.push(word);
  }
  return lists;
}
