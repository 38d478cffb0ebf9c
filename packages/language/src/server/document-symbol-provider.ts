import { Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import type { DocumentSymbol, DocumentSymbolParams } from 'vscode-languageserver-protocol';
import { type OutlineItem, outlineOf } from '../outline/outline.js';
import { fileOf } from '../scope/imports.js';
import { rangeOf } from './convert.js';
import { SYMBOL_KINDS } from './symbol-kinds.js';

/** Turns the outline into what the editor's protocol has for it. */
export class JoineryDocumentSymbolProvider implements DocumentSymbolProvider {
  async getSymbols(
    document: LangiumDocument,
    _params: DocumentSymbolParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<DocumentSymbol[]> {
    await interruptAndCheck(token);
    const file = fileOf(document);
    return file ? outlineOf(file).map((item) => symbolOf(document, item)) : [];
  }
}

function symbolOf(document: LangiumDocument, item: OutlineItem): DocumentSymbol {
  return {
    name: item.name,
    detail: item.detail,
    kind: SYMBOL_KINDS[item.kind],
    range: rangeOf(document, item),
    selectionRange: rangeOf(document, item.named),
    children: item.children.map((child) => symbolOf(document, child)),
  };
}
