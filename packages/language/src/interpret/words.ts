import type { End, PartRef, Plane } from '../generated/ast.js';

/** A part as it is written, whether or not there is one: "lshelf 2". */
export function wordsOfRef(ref: PartRef | undefined): string {
  const name = ref?.part?.$refText ?? '…';
  return ref?.index === undefined ? name : `${name} ${ref.index}`;
}

export const wordsOfRefs = (refs: readonly PartRef[]): string => refs.map(wordsOfRef).join(', ');

/** A plane as it is written: "back.groove.front", or "lh" for the same side of it. */
export function wordsOfPlane(plane: Plane | undefined): string {
  const of = plane?.of === undefined ? '' : `.${plane.of}`;
  return `${wordsOfRef(plane?.ref)}${of}${plane?.side === undefined ? '' : `.${plane.side}`}`;
}

export const wordsOfEnd = (end: End | undefined): string =>
  `${wordsOfRef(end?.ref)}${end?.side === undefined ? '' : `.${end.side}`}`;
