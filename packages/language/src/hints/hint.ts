import type { FitResult } from '@dryfit/engine';
import type { Cabinet } from '../generated/ast.js';
import type { Lengths } from '../hover/lengths.js';

/** Something worked out that is shown in the text where it belongs, without being part of it. */
export interface Hint {
  readonly offset: number;
  readonly label: string;
  /** Why, as markdown; made only when a reader asks for it. */
  readonly why: () => string | undefined;
}

/** What hints of a cabinet are made from. */
export interface Fitted {
  readonly result: FitResult;
  readonly stale: boolean;
  readonly lengths: Lengths;
}

/** Which kinds of hints are wanted. */
export interface HintKinds {
  readonly sizes: boolean;
  readonly spacers: boolean;
  readonly slotCounts: boolean;
}

/** Gives what was found for a cabinet; asked only when a hint needs it. */
export type FitOf = (cabinet: Cabinet) => { readonly result: FitResult; readonly stale: boolean } | undefined;
