import type { LangiumDocument } from 'langium';
import type { Position, SelectionRange } from 'vscode-languageserver-protocol';
import { selectionsAt } from '../ranges/selection.js';
import { fileOf } from '../scope/imports.js';
import { rangeOf } from './convert.js';

/** What a selection at each place grows to. */
export function selectionRangesOf(document: LangiumDocument, positions: readonly Position[]): SelectionRange[] {
  const file = fileOf(document);
  return positions.map((position) => {
    const found = file ? selectionsAt(file, document.textDocument.offsetAt(position)) : [];
    const nothing: SelectionRange = { range: { start: position, end: position } };
    return (
      found.reduceRight<SelectionRange | undefined>(
        (parent, one) => ({ range: rangeOf(document, one), ...(parent && { parent }) }),
        undefined,
      ) ?? nothing
    );
  });
}
