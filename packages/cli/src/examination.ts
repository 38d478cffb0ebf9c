import type { FitResult, Shop, Units, WorkOrder } from '@dryfit/engine';
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
  /** Units of the plain numbers of a file that has been read, by its address. */
  readonly unitsOf: (uri: string) => Units | undefined;
  /** What the workshop of the first file keeps. */
  readonly shop: () => Shop | undefined;
}

export interface MadeJob {
  readonly name: string;
  readonly items: readonly Item[];
  /** What is milled before what. */
  readonly orders: readonly WorkOrder[];
}
