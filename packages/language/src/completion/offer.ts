import type { Piece } from './snippet.js';

/** What may come next in a text, as the grammar has it. */
export type Feature =
  /** A word of the language, in the grammar rule it belongs to. */
  | { readonly kind: 'word'; readonly word: string; readonly rule: string }
  /** The name of a thing of a type, used in a grammar rule. */
  | { readonly kind: 'name'; readonly type: string; readonly rule: string }
  /** The name of a check. */
  | { readonly kind: 'check' }
  /** A text in quotes. */
  | { readonly kind: 'text'; readonly rule: string };

export type OfferKind = 'word' | 'side' | 'part' | 'parameter' | 'cabinet' | 'stock' | 'check' | 'file' | 'statement';

/** Something that fits where the cursor stands. */
export interface Offer {
  readonly label: string;
  readonly kind: OfferKind;
  /** Lower comes first; of equal rank, in the order offered. */
  readonly rank: number;
  /** In a few words what it is, or why it stands further down. */
  readonly detail?: string | undefined;
  /** Markdown. */
  readonly documentation?: string | undefined;
  /** What is written, where that is not the label. */
  readonly insert?: readonly Piece[] | undefined;
  /** The thing named, whose hover is worked out when a reader looks at it. */
  readonly names?: { readonly type: string; readonly name: string } | undefined;
}

/** How far up things stand in a list. */
export const RANK = {
  found: 0,
  fits: 10,
  also: 20,
  statement: 24,
  word: 30,
  /** Can be written, and does not work out here. */
  unfit: 60,
  last: 80,
} as const;
