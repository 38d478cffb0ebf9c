import { Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import type { FoldingRangeProvider } from 'langium/lsp';
import type { FoldingRange, FoldingRangeParams } from 'vscode-languageserver-protocol';
import { foldsOf } from '../ranges/folding.js';
import { fileOf } from '../scope/imports.js';

/** Turns folds into what the editor's protocol has for them. */
export class JoineryFoldingRangeProvider implements FoldingRangeProvider {
  async getFoldingRanges(
    document: LangiumDocument,
    _params: FoldingRangeParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<FoldingRange[]> {
    await interruptAndCheck(token);
    const file = fileOf(document);
    if (!file) return [];
    return foldsOf(file).map(({ first, last, kind }) => ({ startLine: first, endLine: last, ...(kind && { kind }) }));
  }
}
