import { DocumentState, type LangiumDocument } from 'langium';
import type { JoineryCodeLensProvider } from './code-lens-provider.js';
import type { JoineryServerServices } from './services.js';

/** How long an editor may take after an edit to ask for lenses, ms. */
const PATIENCE = 1000;

/**
 * Has lenses asked for again where an editor has left those of an earlier text: one that loses the keyboard a moment
 * after an edit drops its own question, and would say over a cabinet that is mended that something is wrong with it.
 * @param refresh has the client ask; called once for a text
 */
export function refreshLensesLeft(
  { shared, lsp }: JoineryServerServices,
  refresh: () => void,
  after: number = PATIENCE,
): void {
  const lenses = lsp.CodeLensProvider as JoineryCodeLensProvider;
  const refreshed = new WeakMap<LangiumDocument, number>();
  shared.workspace.DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
    const { version } = document.textDocument;
    if (!lenses.isBehind(document) || refreshed.get(document) === version) return;
    setTimeout(() => {
      if (document.textDocument.version !== version || !lenses.isBehind(document)) return;
      refreshed.set(document, version);
      refresh();
    }, after);
  });
}
