import type { Scene } from '@dryfit/output';
import type { Range } from 'vscode-languageserver-types';

/*
 * What a client may ask beyond the editor protocol. Any editor can use these; none is needed for findings, hovers,
 * hints and fixes.
 */

/** A place in a text, as editors count. */
export interface TextPlace {
  readonly uri: string;
  readonly range: Range;
}

export interface OfDocument {
  readonly textDocument: { readonly uri: string };
}

/** Request, `OfDocument` → `DrawnFile`: what there is to draw of a file. */
export const DRAWINGS = 'dryfit/drawings';

export interface DrawnFile {
  /** Version of the text it was asked for; absent if the file is not open. */
  readonly version?: number | undefined;
  /** Some of the text cannot be read. */
  readonly broken: boolean;
  /** The text is broken, and this is drawn from the last one that was whole. */
  readonly stale: boolean;
  /** False while the setting `joinery` keeps cabinets from being worked out; there is nothing to draw then. */
  readonly workedOut: boolean;
  readonly cabinets: readonly DrawnCabinet[];
}

export interface DrawnCabinet {
  readonly scene: Scene;
  /** Where the text of each shape is, by the shape's id; the first place is where it is given. */
  readonly places: Readonly<Record<string, readonly TextPlace[]>>;
  /** Where each finding stands, in the order of the scene's findings. */
  readonly findingPlaces: readonly TextPlace[];
}

/** Request, `OfDocument` → `SlotRows`: every slot of a file's cabinets, for a table that can be sorted. */
export const SLOTS = 'dryfit/slots';

export interface SlotRows {
  readonly version?: number | undefined;
  readonly broken: boolean;
  readonly stale: boolean;
  readonly workedOut: boolean;
  /** The sentence that stands over the table while it is not to be milled from. */
  readonly warning?: string | undefined;
  readonly columns: readonly { readonly heading: string; readonly right: boolean }[];
  /** Rows as `dryfit build` writes them: halves that are milled alike are one row. */
  readonly rows: readonly SlotRow[];
  /** How the table is to be read, and what it leaves out. */
  readonly notes: readonly string[];
  /** What keeps hands and eyes whole. */
  readonly cautions: readonly string[];
}

export interface SlotRow {
  readonly cells: readonly {
    /** As it is printed, in the file's units. */
    readonly text: string;
    /** What it is sorted by: mm for a length. */
    readonly sort: string | number;
  }[];
  /** Shapes of its slots in the drawing of its cabinet. */
  readonly shapes: readonly string[];
  /** Title of the cabinet, as its drawing has it. */
  readonly cabinet: string;
  /** Parts it is milled into. */
  readonly parts: readonly string[];
  readonly places: readonly TextPlace[];
}

/** Request, `SlotTableAsked` → string: rows of the slot table as `dryfit build` writes them. */
export const SLOT_TABLE = 'dryfit/slotTable';

export interface SlotTableAsked extends OfDocument {
  readonly as: 'csv' | 'markdown';
  /** Title of the cabinet whose table it is; all cabinets of the file in one table if absent. */
  readonly cabinet?: string | undefined;
  /** Which rows of `SlotRows`, in the order they are wanted; all if absent. */
  readonly rows?: readonly number[] | undefined;
}

/** Notification from the server, `FitState`: a file has been worked out anew. */
export const FIT_STATE = 'dryfit/fitState';

export interface FitState {
  readonly uri: string;
  readonly version?: number | undefined;
  /** `fits`: nothing is wrong; `findings`: there is something to say; `broken`: the text cannot be read. */
  readonly state: 'fits' | 'findings' | 'broken';
  readonly errors: number;
  readonly warnings: number;
  readonly units: 'mm' | 'in';
  readonly cabinets: readonly string[];
}

/**
 * Notification from the server, `FileRead`: a file that is not open, and whose drawing or slots were asked for, has been
 * read anew, or is no more. Of open files `FIT_STATE` tells.
 */
export const FILE_READ = 'dryfit/fileRead';

export interface FileRead {
  readonly uri: string;
}

/**
 * Address of the page about a check, given with each finding to a client that says
 * `initializationOptions.dryfit.checkPages: true`, which is to show that page.
 */
export const checkPage = (code: string): string => `dryfit-check:/${code}.md`;

/**
 * Request without parameters → `WorkspaceChecked`: works out every file of the workspace and tells its findings. Files
 * that are not open are otherwise not worked out; those that had findings are looked at until they have none.
 */
export const CHECK_WORKSPACE = 'dryfit/checkWorkspace';

export interface WorkspaceChecked {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
}
