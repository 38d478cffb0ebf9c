import type { PlanRows, SlotRows } from '@dryfit/language/protocol';
import type { Scene } from '@dryfit/output';

/*
 * What a panel's page and the extension say to each other. Pages know no documents: they name shapes and rows, and
 * the extension finds their texts.
 */

/** Shapes that the cursor of an editor is in: by their first place (`given`), or by another of their places (`named`). */
export type Lit = Readonly<Record<string, 'given' | 'named'>>;

/** What a page shows, and why it may not be up to date. */
export interface Standing {
  /** Name of the file, for people. */
  readonly name: string;
  readonly uri: string;
  /** `open` if it is deleted and only an editor holds its text; `closed` if it was never on a disk. */
  readonly file: 'there' | 'open' | 'deleted' | 'closed' | 'unreadable';
  /** The language server is running. */
  readonly served: boolean;
  /** There is something that was last shown. */
  readonly last: boolean;
  readonly broken: boolean;
  readonly stale: boolean;
  readonly workedOut: boolean;
}

/** Places of a shape, as a page lists them. */
export interface ShownPlaces {
  readonly cabinet: string;
  readonly shape: string;
  /** "periodicals.joinery:22". */
  readonly labels: readonly string[];
  /** The one that is shown in the text. */
  readonly at?: number | undefined;
}

export type ToDrawing =
  | {
      readonly kind: 'drawn';
      readonly standing: Standing;
      readonly scenes: readonly Scene[];
      /** The cabinet that is to be shown, by its name, if it is not for the reader to choose. */
      readonly cabinet?: string | undefined;
    }
  | { readonly kind: 'lit'; readonly cabinet: string | undefined; readonly lit: Readonly<Record<string, Lit>> }
  | ({ readonly kind: 'places' } & ShownPlaces)
  /** A command asks for the drawing that the page shows, as a file. */
  | { readonly kind: 'save' };

export type FromDrawing =
  | { readonly kind: 'ready' }
  | { readonly kind: 'open'; readonly cabinet: string; readonly shape: string; readonly place?: number | undefined }
  /** Asks where the text of a shape is, without going there. */
  | { readonly kind: 'places'; readonly cabinet: string; readonly shape: string }
  | { readonly kind: 'finding'; readonly cabinet: string; readonly index: number }
  | { readonly kind: 'save'; readonly cabinet: string; readonly svg: string; readonly name: string };

export type ToSlots =
  | {
      readonly kind: 'rows';
      readonly standing: Standing;
      readonly table: SlotRows | undefined;
      /** The cabinet whose slots are to be listed, by its name, if it is not for the reader to choose. */
      readonly cabinet?: string | undefined;
    }
  /** Rows that the cursor of an editor is in, those it is nearest to first. */
  | { readonly kind: 'lit'; readonly rows: readonly number[] }
  | { readonly kind: 'copied'; readonly as: 'csv' | 'markdown'; readonly rows: number }
  /** A command asks for what the page shows. */
  | { readonly kind: 'copy'; readonly as: 'csv' | 'markdown' };

export type FromSlots =
  | { readonly kind: 'ready' }
  | { readonly kind: 'open'; readonly row: number }
  | {
      readonly kind: 'copy';
      readonly as: 'csv' | 'markdown';
      readonly cabinet: string | undefined;
      readonly rows: readonly number[];
    };

export type ToPlan =
  | {
      readonly kind: 'plan';
      readonly standing: Standing;
      readonly jobs: readonly string[];
      readonly plan: PlanRows | undefined;
      /** The job that is to be shown, if it is not for the reader to choose. */
      readonly job?: string | undefined;
    }
  /** The plan is being worked out anew. */
  | { readonly kind: 'asked' }
  /** What the cursor of an editor is in: rows as "set-up/row", settings as "set-up/setting", counted from 0. */
  | { readonly kind: 'lit'; readonly rows: readonly string[]; readonly settings: readonly string[] };

export type FromPlan =
  | { readonly kind: 'ready' }
  | { readonly kind: 'job'; readonly job: string }
  | { readonly kind: 'open'; readonly setUp: number; readonly row?: number; readonly setting?: number }
  /** The job's own text. */
  | { readonly kind: 'open-job' }
  /** The sheets of a job, or of one of its set-ups, counted from 1. */
  | { readonly kind: 'print'; readonly job: string; readonly setUp?: number };
