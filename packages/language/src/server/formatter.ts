import type { LangiumDocument } from 'langium';
import type { Formatter } from 'langium/lsp';
import type {
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  TextEdit,
} from 'vscode-languageserver-protocol';
import { formatEdits } from '../format/edits.js';
import { type Reader, readerOf } from '../format/pieces.js';
import { editsInRange } from '../format/range.js';
import { editsAfterTyping, TYPED } from '../format/typed.js';
import type { JoineryServices } from '../services.js';
import { stretchOf, toTextEdits } from './convert.js';

/** Turns the edits of the layout into what the editor's protocol has for them. */
export class JoineryFormatter implements Formatter {
  readonly formatOnTypeOptions = { firstTriggerCharacter: TYPED[0], moreTriggerCharacter: TYPED.slice(1) };
  private readonly reader: Reader;

  constructor(services: JoineryServices) {
    this.reader = readerOf(services);
  }

  formatDocument(document: LangiumDocument): TextEdit[] {
    return toTextEdits(document, formatEdits(document.textDocument.getText(), this.reader));
  }

  formatDocumentRange(document: LangiumDocument, params: DocumentRangeFormattingParams): TextEdit[] {
    const { start, end } = stretchOf(document, params.range);
    return toTextEdits(document, editsInRange(document.textDocument.getText(), start, end, this.reader));
  }

  formatDocumentOnType(document: LangiumDocument, { position, ch }: DocumentOnTypeFormattingParams): TextEdit[] {
    const text = document.textDocument;
    return toTextEdits(document, editsAfterTyping(text.getText(), text.offsetAt(position), ch, this.reader));
  }
}
