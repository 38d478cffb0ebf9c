import type { LangiumDocument } from 'langium';
import type { Formatter } from 'langium/lsp';
import type { DocumentRangeFormattingParams, TextEdit } from 'vscode-languageserver-protocol';
import { type Edit, editsWithin, formatEdits } from '../format/edits.js';
import { type Reader, readerOf } from '../format/pieces.js';
import type { JoineryServices } from '../services.js';

/** Turns the edits of the layout into what the editor's protocol has for them. */
export class JoineryFormatter implements Formatter {
  readonly formatOnTypeOptions = undefined;
  private readonly reader: Reader;

  constructor(services: JoineryServices) {
    this.reader = readerOf(services);
  }

  formatDocument(document: LangiumDocument): TextEdit[] {
    return toTextEdits(document, formatEdits(document.textDocument.getText(), this.reader));
  }

  formatDocumentRange(document: LangiumDocument, { range }: DocumentRangeFormattingParams): TextEdit[] {
    const text = document.textDocument;
    const edits = formatEdits(text.getText(), this.reader);
    return toTextEdits(document, editsWithin(edits, text.offsetAt(range.start), text.offsetAt(range.end)));
  }

  formatDocumentOnType(): TextEdit[] {
    return [];
  }
}

function toTextEdits({ textDocument }: LangiumDocument, edits: readonly Edit[]): TextEdit[] {
  return edits.map(({ start, end, text }) => ({
    range: { start: textDocument.positionAt(start), end: textDocument.positionAt(end) },
    newText: text,
  }));
}
