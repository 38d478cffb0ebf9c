/**
 * Where a statement, part, value or finding stands in a text.
 *
 * `uri` names the document, `start` and `end` are UTF-16 offsets into it (`end` is exclusive).
 * The engine never reads the text: whoever prints a finding turns offsets into lines and columns.
 */
export interface Source {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
}
