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
  /** The text is broken, and this is drawn from the last one that was whole. */
  readonly stale: boolean;
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
  readonly stale: boolean;
  readonly columns: readonly { readonly heading: string; readonly right: boolean }[];
  readonly rows: readonly SlotRow[];
}

export interface SlotRow {
  readonly cells: readonly {
    /** As it is printed, in the file's units. */
    readonly text: string;
    /** What it is sorted by: mm for a length. */
    readonly sort: string | number;
  }[];
  /** Shape of the slot in the drawing of its cabinet. */
  readonly shape: string;
  readonly cabinet: string;
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
}
