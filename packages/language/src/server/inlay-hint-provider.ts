import { Cancellation, type LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint, InlayHintParams } from 'vscode-languageserver-protocol';
import type { Hint } from '../hints/hint.js';
import { hintsOf } from '../hints/hints.js';
import { fileOf } from '../scope/imports.js';
import type { Stretch } from '../tree/leaves.js';
import { collect, stretchOf } from './convert.js';
import type { JoineryServerServices } from './services.js';

/** Turns hints into what the editor's protocol has for them; their reasons are worked out when they are asked for. */
export class JoineryInlayHintProvider implements InlayHintProvider {
  constructor(private readonly services: Pick<JoineryServerServices, 'editor'>) {}

  async getInlayHints(
    document: LangiumDocument,
    { range }: Pick<InlayHintParams, 'range'>,
    token = Cancellation.CancellationToken.None,
  ): Promise<InlayHint[]> {
    const hints = await collect(this.hintsIn(document, stretchOf(document, range)), token);
    return hints.map(({ offset, label }) => ({
      position: document.textDocument.positionAt(offset),
      label,
      paddingLeft: true,
      data: { uri: document.uri.toString() },
    }));
  }

  /** The hint with the reasons for what it says. */
  resolve(document: LangiumDocument, hint: InlayHint): InlayHint {
    const at = document.textDocument.offsetAt(hint.position);
    for (const { offset, label, why } of this.hintsIn(document, { start: at, end: at })) {
      const value = offset === at && label === hint.label ? why() : undefined;
      if (value !== undefined) return { ...hint, tooltip: { kind: 'markdown', value } };
    }
    return hint;
  }

  private hintsIn(document: LangiumDocument, within: Stretch): Iterable<Hint> {
    const { Settings, LastGood } = this.services.editor;
    const { hints, joinery } = Settings.now;
    const file = fileOf(document);
    return file && joinery ? hintsOf(file, within, hints, (cabinet) => LastGood.of(cabinet)) : [];
  }
}
