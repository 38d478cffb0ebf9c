/** A piece of a statement that is offered whole: text as it stands, a place to write something, or the place to go on. */
export type Piece =
  | string
  | { readonly hole: string; readonly lengths?: boolean }
  | { readonly choices: readonly [string, ...string[]] }
  | { readonly end: true };

export const hole = (example: string): Piece => ({ hole: example });
/** Lengths in mm, as an example in the units of the file. */
export const mm = (example: string): Piece => ({ hole: example, lengths: true });
export const END: Piece = { end: true };

/** Names to choose from; without any, a place to write one. */
export function choices(names: readonly string[], otherwise: string): Piece {
  const [first, ...others] = names.slice(0, MOST);
  return first === undefined ? hole(otherwise) : { choices: [first, ...others] };
}

/** More names than this are no choice but a list to search. */
const MOST = 40;

/** In the editor protocol's form, with stops for the tabulator. */
export function asSnippet(pieces: readonly Piece[]): string {
  let stop = 0;
  return pieces
    .map((piece) => {
      if (typeof piece === 'string') return escaped(piece);
      if ('end' in piece) return '$0';
      stop += 1;
      if ('hole' in piece) return `\${${stop}:${escaped(piece.hole)}}`;
      return `\${${stop}|${piece.choices.map((choice) => escaped(choice).replace(/[,|]/g, '\\$&')).join(',')}|}`;
    })
    .join('');
}

/** For a client without snippets: the same with the first choice everywhere. */
export function asPlain(pieces: readonly Piece[]): string {
  return pieces
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      if ('end' in piece) return '';
      return 'hole' in piece ? piece.hole : piece.choices[0];
    })
    .join('');
}

const escaped = (text: string): string => text.replace(/[\\$}]/g, '\\$&');
