import { DocumentState } from 'langium';
import type { JoineryLanguageServer } from './language-server.js';
import { refreshLensesLeft } from './lenses-left.js';
import type { JoineryServerServices } from './services.js';
import type { Settings } from './settings.js';

/**
 * Has the client ask again for hints and lenses where no edit of its own makes it: after a setting that they depend on
 * has changed, and when an open file was worked out anew because of a change in another.
 */
export function refreshWhatDepends(services: JoineryServerServices): void {
  const { shared, editor } = services;
  const connection = shared.lsp.Connection;
  if (!connection) return;
  const { DocumentBuilder, TextDocuments } = shared.workspace;
  const can = () => (shared.lsp.LanguageServer as JoineryLanguageServer).client.workspace;
  const hints = () => void (can()?.inlayHint?.refreshSupport && connection.languages.inlayHint.refresh().catch(ignore));
  const lenses = () =>
    void (can()?.codeLens?.refreshSupport && connection.sendRequest('workspace/codeLens/refresh').catch(ignore));

  editor.Settings.onChange((now, before) => {
    if (changes(now, before, ['hints', 'thickness', 'joinery'])) hints();
    if (changes(now, before, ['lenses', 'thickness', 'joinery', 'severity'])) lenses();
  });

  refreshLensesLeft(services, () => {
    if (editor.Settings.now.lenses && editor.Settings.now.joinery) lenses();
  });

  const edited = new Set<string>();
  DocumentBuilder.onUpdate((changed) => {
    for (const uri of changed) edited.add(uri.toString());
  });
  DocumentBuilder.onBuildPhase(DocumentState.Validated, (documents) => {
    const other = documents.some(({ uri }) => !edited.has(uri.toString()) && TextDocuments.get(uri) !== undefined);
    edited.clear();
    if (!other) return;
    const { hints: kinds, lenses: wanted, joinery } = editor.Settings.now;
    if (joinery && Object.values(kinds).some(Boolean)) hints();
    if (joinery && wanted) lenses();
  });
}

const changes = (now: Settings, before: Settings, names: readonly (keyof Settings)[]): boolean =>
  names.some((name) => JSON.stringify(now[name]) !== JSON.stringify(before[name]));

/** A client that goes away while it is asked has no hints to show. */
const ignore = () => undefined;
