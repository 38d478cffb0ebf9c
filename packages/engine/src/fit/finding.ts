import type { Source } from '../spec/source.js';
import type { PartId } from '../spec/spec.js';
import type { Text } from './text.js';

/** `error`: cannot be made as written. `warning`: can be made, unwisely. `info`: worth knowing. */
export type Severity = 'error' | 'warning' | 'info';

/** Another place that has to do with a finding. */
export interface Related {
  readonly message: Text;
  readonly source: Source;
}

/** A place in the cabinet frame where a finding shows, mm: a line, or a point where both ends are one. */
export interface Mark {
  /** The part it is to be marked in. */
  readonly part: PartId;
  readonly from: readonly [x: number, y: number, z: number];
  readonly to: readonly [x: number, y: number, z: number];
  /** A few words to stand beside it: "2.3 left". */
  readonly words: Text;
}

/** Something that is wrong, unwise or worth knowing about a spec. */
export interface Finding {
  /** Name of the check, such as `slot-near-edge`. */
  readonly code: string;
  readonly severity: Severity;
  /** What the check itself takes it to be, where a house takes it otherwise. */
  readonly asFound?: Severity | undefined;
  /** What is wrong and why, with its numbers; one or two sentences. */
  readonly message: Text;
  /** What would cure it, as an imperative sentence. */
  readonly cure: Text;
  readonly source: Source;
  readonly related: readonly Related[];
  /** What the finding is about, by id. */
  readonly about: {
    readonly parts?: readonly PartId[] | undefined;
    readonly joint?: string | undefined;
    readonly slots?: readonly string[] | undefined;
    /** Statement whose braces may carry a silence for this finding. */
    readonly statement?: string | undefined;
  };
  /** Where it shows in a drawing; for pens only, figures to be read are in the message. */
  readonly marks?: readonly Mark[] | undefined;
  /** Exact figures a quick fix needs, lengths in mm as "n/d". */
  readonly data?: Readonly<Record<string, string | readonly string[]>> | undefined;
}
