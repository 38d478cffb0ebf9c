import type { LangiumDocument } from 'langium';
import { MessageType, ShowMessageNotification } from 'vscode-languageserver-protocol';
import { troublesOf } from '../findings/severity.js';
import type { ServerDocumentBuilder } from './document-builder.js';
import type { JoineryServerServices } from './services.js';
import type { Settings } from './settings.js';

/** Has documents whose findings are told examined anew after a change of a setting that these depend on. */
export function settingsTakeEffect({ shared, editor }: JoineryServerServices): void {
  const { LangiumDocuments, WorkspaceLock, WorkspaceManager } = shared.workspace;
  const builder = shared.workspace.DocumentBuilder as ServerDocumentBuilder;
  const told = new Set<string>();
  editor.Settings.onChange((now, before) => {
    for (const trouble of troublesOf(now.severity)) tell(trouble);
    if (findingsOf(now) !== findingsOf(before)) void examineAnew();
  });

  async function examineAnew(): Promise<void> {
    await WorkspaceManager.ready;
    await WorkspaceLock.write((token) => {
      const told = LangiumDocuments.all.filter((document) => builder.attention.has(document)).toArray();
      return builder.build<LangiumDocument['parseResult']['value']>(told, { validation: true }, token);
    });
  }

  /** A setting that cannot be followed is told once, not at each change of another. */
  function tell(trouble: string): void {
    if (told.has(trouble)) return;
    told.add(trouble);
    // A notification, not a request with an answer: not every client takes those.
    const message = `Setting dryfit.severity: ${trouble}.`;
    void shared.lsp.Connection?.sendNotification(ShowMessageNotification.type, { type: MessageType.Warning, message });
  }
}

const findingsOf = ({ severity, thickness, joinery }: Settings): string =>
  JSON.stringify([thickness, joinery, Object.entries(severity).sort()]);
