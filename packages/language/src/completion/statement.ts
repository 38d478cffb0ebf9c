import type { Situation } from './situation.js';
import type { Piece } from './snippet.js';

/** What a statement is written with where it is offered. */
export type Whole = (situation: Situation) => readonly Piece[];

/** Statements offered whole, by the grammar rule and the word that they begin with. */
export type Statements = Readonly<Record<string, readonly (readonly [label: string, pieces: Whole])[]>>;

export const partNames = ({ parts }: Situation): readonly string[] => [...parts.keys()];

/** Names of a type that the file sees. */
export const namesOf = ({ around, file }: Situation, type: string): readonly string[] => [
  ...around.names(file, type).keys(),
];

/** Another first choice than the first, for the second of two. */
export const secondFirst = ([first, second, ...others]: readonly string[]): readonly string[] =>
  first !== undefined && second !== undefined
    ? [second, first, ...others]
    : [first, second].filter((name) => name !== undefined);
