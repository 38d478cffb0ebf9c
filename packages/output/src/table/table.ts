import type { Bounded, Rational, Text } from '@dryfit/engine';

/** What a column holds: it decides alignment, and how a cell is written for a spreadsheet. */
export type ColumnKind = 'text' | 'count' | 'length' | 'lengths';

export interface Column {
  readonly heading: string;
  readonly kind: ColumnKind;
  /** Left out of printed tables while every cell of it is empty; a spreadsheet always gets it. */
  readonly optional?: boolean;
}

/** One cell, lengths exact and in mm; a text may carry lengths among its words. */
export type Cell =
  | { readonly kind: 'text'; readonly text: Text }
  | { readonly kind: 'count'; readonly count: number }
  | { readonly kind: 'length'; readonly length: Rational | Bounded }
  | { readonly kind: 'lengths'; readonly lengths: readonly Rational[] }
  | { readonly kind: 'empty' };

/** A table as data: nothing is rounded and nothing is laid out until a renderer prints it. */
export interface Table {
  /** File name without its ending: "slots". */
  readonly name: string;
  readonly title: Text;
  /** Stands above everything else: that what follows must not be cut from. */
  readonly warning?: string | undefined;
  readonly columns: readonly Column[];
  /** Each row has one cell a column. */
  readonly rows: readonly (readonly Cell[])[];
  /** How the table is to be read, and what it leaves out. */
  readonly notes: readonly Text[];
  /** What keeps hands, eyes, ears and lungs whole; empty when nobody works at a machine from this table. */
  readonly cautions: readonly string[];
}

export const EMPTY: Cell = { kind: 'empty' };

export function text(content: string | Text): Cell {
  if (content.length === 0) return EMPTY;
  return { kind: 'text', text: typeof content === 'string' ? [content] : content };
}

export function count(n: number): Cell {
  return { kind: 'count', count: n };
}

export function length(value: Rational | Bounded | undefined): Cell {
  return value === undefined ? EMPTY : { kind: 'length', length: value };
}

export function lengths(values: readonly Rational[]): Cell {
  return values.length === 0 ? EMPTY : { kind: 'lengths', lengths: values };
}
