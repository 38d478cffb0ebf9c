import type { Source } from './source.js';

/** Parts of a cabinet, as a job names them. */
export interface PartsOf {
  /** Name of the cabinet: every line of the job that makes it is meant. */
  readonly cabinet: string;
  /** Names of its parts; without a number, all the like parts of that name. */
  readonly parts: readonly { readonly name: string; readonly index?: number | undefined }[];
}

/** What a job asks of the order in which its parts are milled. */
export type WorkOrder =
  /** The parts come late: everything that is milled into other parts is milled before. */
  | { readonly kind: 'late'; readonly parts: PartsOf; readonly source: Source }
  /** Everything that is milled into `first` is milled before anything is milled into `next`. */
  | { readonly kind: 'before'; readonly first: PartsOf; readonly next: PartsOf; readonly source: Source };

/** Whether a job means a part of a cabinet by what it names. */
export const namesPart = (
  named: PartsOf,
  cabinet: string,
  { kind, index }: { readonly kind: string; readonly index?: number | undefined },
): boolean =>
  named.cabinet === cabinet &&
  named.parts.some((one) => one.name === kind && (one.index === undefined || one.index === index));
