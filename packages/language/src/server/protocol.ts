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

/** Request, `PlanAsked` → `PlannedFile`: in which set-ups a job of a file is milled. */
export const PLAN = 'dryfit/plan';

export interface PlanAsked extends OfDocument {
  /** Name of the job; the first of the file if absent, or if there is none of that name. */
  readonly job?: string | undefined;
}

export interface PlannedFile {
  readonly version?: number | undefined;
  readonly broken: boolean;
  readonly stale: boolean;
  readonly workedOut: boolean;
  /** Every job of the file, by name. */
  readonly jobs: readonly string[];
  /** Absent if the file has no job. */
  readonly plan?: PlanRows | undefined;
}

/** The plan of one job, printed in the units of its file. */
export interface PlanRows {
  readonly job: string;
  readonly places: readonly TextPlace[];
  /** The sentence that stands over the plan while it is not to be milled from. */
  readonly warning?: string | undefined;
  /** Minutes of changing and of milling. */
  readonly change: string;
  readonly mill: string;
  /** No choice of settings and no order takes less changing than `atLeast` minutes; `proven` if that is what it takes. */
  readonly atLeast: string;
  readonly proven: boolean;
  /** What it takes, what is proven of it, and what other orders would take. */
  readonly notes: readonly string[];
  /** What keeps hands and eyes whole. */
  readonly cautions: readonly string[];
  /** In the order they are set up. */
  readonly setUps: readonly PlannedSetUp[];
  /** What else the plan tells, such as how each part goes through its set-ups. */
  readonly more: readonly PlanTable[];
}

/** A table of the plan as the command line prints it. */
export interface PlanTable {
  readonly title: string;
  readonly columns: readonly { readonly heading: string; readonly right: boolean }[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

export interface PlannedSetUp {
  readonly settings: readonly PlannedSetting[];
  /** What is changed before it, in words; minutes of that, and of milling. */
  readonly changes: string;
  readonly change: string;
  readonly mill: string;
  readonly pieces: number;
  readonly loads: number;
  readonly slots: number;
  readonly columns: readonly { readonly heading: string; readonly right: boolean }[];
  readonly rows: readonly PlannedRow[];
  /** Which lines are set, and which pieces lie beside each other. */
  readonly notes: readonly string[];
}

/** One thing that is set. */
export interface PlannedSetting {
  readonly name: string;
  readonly words: string;
  /** It is not as the set-up before left it. */
  readonly anew: boolean;
  /** Where it comes from: its entry in the shop's text, or the joints that ask for it. */
  readonly places: readonly TextPlace[];
}

/** Pieces of one cabinet that are milled alike. */
export interface PlannedRow {
  /** A name for each part's surface with its joint that holds while figures change: what two plans are compared by. */
  readonly keys: readonly string[];
  readonly cells: readonly string[];
  /** The joints first. */
  readonly places: readonly TextPlace[];
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
  readonly jobs: readonly string[];
}

/**
 * Notification from the server, `FileRead`: a file that is not open, and whose drawing, slots or plan were asked for, has been
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
