import { DocumentState, interruptAndCheck } from 'langium';
import { createServerRequestHandler } from 'langium/lsp';
import type { CodeLens, CompletionItem, InlayHint, TextDocumentIdentifier } from 'vscode-languageserver-protocol';
import type { JoineryCodeLensProvider } from './code-lens-provider.js';
import type { JoineryCompletionProvider } from './completion-provider.js';
import type { JoineryInlayHintProvider } from './inlay-hint-provider.js';
import { selectionRangesOf } from './selection-ranges.js';
import type { JoineryServerServices } from './services.js';

/** Answers what is standard in the editor protocol and not answered by Langium. */
export function answerStandardRequests({ shared, lsp }: JoineryServerServices): void {
  const connection = shared.lsp.Connection;
  if (!connection) return;
  const [hints, lenses] = [
    lsp.InlayHintProvider as JoineryInlayHintProvider,
    lsp.CodeLensProvider as JoineryCodeLensProvider,
  ];
  connection.onSelectionRanges(
    createServerRequestHandler(
      async (_, document, { positions }, token) => {
        await interruptAndCheck(token);
        return selectionRangesOf(document, positions);
      },
      shared,
      DocumentState.Parsed,
    ),
  );
  const resolveHint = createServerRequestHandler<Of<InlayHint>, InlayHint, never>(
    (_, document, { of }) => hints.resolve(document, of),
    shared,
    DocumentState.IndexedReferences,
  );
  connection.languages.inlayHint.resolve((of, token) => withFile(of, (asked) => resolveHint(asked, token)));
  const resolveLens = createServerRequestHandler<Of<CodeLens>, CodeLens, never>(
    (_, document, { of }, token) => lenses.resolve(document, of, token),
    shared,
    DocumentState.IndexedReferences,
  );
  connection.onCodeLensResolve((of, token) => withFile(of, (asked) => resolveLens(asked, token)));
  const completion = lsp.CompletionProvider as JoineryCompletionProvider;
  const resolveItem = createServerRequestHandler<Of<CompletionItem>, CompletionItem, never>(
    (_, document, { of }) => completion.resolve(of, document),
    shared,
    DocumentState.IndexedReferences,
  );
  connection.onCompletionResolve((of, token) => withFile(of, (asked) => resolveItem(asked, token)));
}

interface Of<T> {
  readonly textDocument: TextDocumentIdentifier;
  readonly of: T;
}

/** Asks with the file that a thing says it belongs to; what comes from elsewhere goes back as it came. */
async function withFile<T extends { data?: unknown }>(of: T, ask: (asked: Of<T>) => unknown): Promise<T> {
  const { uri } = (of.data ?? {}) as { uri?: string };
  if (typeof uri !== 'string') return of;
  return ((await ask({ textDocument: { uri }, of })) as T | null) ?? of;
}
