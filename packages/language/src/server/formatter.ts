import { Cancellation, interruptAndCheck, type LangiumDocument, OperationCancelled } from 'langium';
import type { Formatter } from 'langium/lsp';
import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  TextEdit,
} from 'vscode-languageserver-protocol';
import { type Edit, formatEdits } from '../format/edits.js';
import { type Reader, readerOf } from '../format/pieces.js';
import { editsInRange } from '../format/range.js';
import type { Steps } from '../format/steps.js';
import { editsAfterTyping, TYPED } from '../format/typed.js';
import type { JoineryServices } from '../services.js';
import { stretchOf, toTextEdits } from './convert.js';

type Token = Cancellation.CancellationToken;
const { None } = Cancellation.CancellationToken;

/** Turns the edits of the layout into what the editor's protocol has for them; leaves off when nobody wants them. */
export class JoineryFormatter implements Formatter {
  readonly formatOnTypeOptions = { firstTriggerCharacter: TYPED[0], moreTriggerCharacter: TYPED.slice(1) };
  private readonly reader: Reader;

  constructor(services: JoineryServices) {
    this.reader = readerOf(services);
  }

  formatDocument(document: LangiumDocument, _?: DocumentFormattingParams, token: Token = None): Promise<TextEdit[]> {
    return edited(document, token, formatEdits(document.textDocument.getText(), this.reader));
  }

  formatDocumentRange(
    document: LangiumDocument,
    params: DocumentRangeFormattingParams,
    token: Token = None,
  ): Promise<TextEdit[]> {
    const { start, end } = stretchOf(document, params.range);
    return edited(document, token, editsInRange(document.textDocument.getText(), start, end, this.reader));
  }

  formatDocumentOnType(
    document: LangiumDocument,
    { position, ch }: DocumentOnTypeFormattingParams,
    token: Token = None,
  ): Promise<TextEdit[]> {
    const text = document.textDocument;
    return edited(document, token, editsAfterTyping(text.getText(), text.offsetAt(position), ch, this.reader));
  }
}

async function edited(document: LangiumDocument, token: Token, steps: Steps<Edit[]>): Promise<TextEdit[]> {
  const { version } = document.textDocument;
  for (;;) {
    await interruptAndCheck(token);
    // What is laid out is the text as it was; in another its edits would land in the wrong places.
    if (document.textDocument.version !== version) throw OperationCancelled;
    const { done, value } = steps.next();
    if (done) return toTextEdits(document, value);
  }
}
