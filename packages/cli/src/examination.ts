import type { FitResult, Units } from '@dryfit/engine';
import type { Found, Item, Locate } from '@dryfit/output';

/** What a set of files says, as every command needs it. */
export interface Examination {
  /** How many files were looked at. */
  readonly files: number;
  /** Every finding: of the text, and of each cabinet as declared and as jobs make it. */
  readonly found: readonly Found[];
  /** The cabinets declared in the files, with their own parameters. */
  readonly cabinets: readonly FitResult[];
  readonly jobs: readonly MadeJob[];
  /** Units the first file is written in. */
  readonly units: Units;
  readonly locate: Locate;
}

export interface MadeJob {
  readonly name: string;
  readonly items: readonly Item[];
}
