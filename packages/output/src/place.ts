import type { Source } from '@dryfit/engine';
import type { Static } from '@sinclair/typebox';
import type { Place as PlaceSchema } from './schema-parts.js';

/** A place in a file, lines and columns from 1; columns count UTF-16 code units. */
export type Place = Readonly<Static<typeof PlaceSchema>>;

/** A place with the lines it covers, for quoting. */
export interface Quoted extends Place {
  /** Text of the lines from `line` to `endLine`, without line ends. */
  readonly lines: readonly string[];
}

/**
 * Finds what stands at a source. The caller knows the texts; the answer is undefined for a source in a text it
 * has not got.
 */
export type Locate = (source: Source) => Quoted | undefined;

/** A place without its text. */
export function placeOf(source: Source | undefined, locate: Locate): Place | undefined {
  const quoted = source && locate(source);
  if (quoted === undefined) return undefined;
  const { file, line, column, endLine, endColumn } = quoted;
  return { file, line, column, endLine, endColumn };
}
