import type { Finding } from '@dryfit/engine';
import type { Cancellation, LangiumDocument } from 'langium';
import { URI } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { curesOf } from '../fixes/cures.js';
import type { FileEdit } from '../fixes/fix.js';
import { Trial } from '../fixes/trial.js';
import type { JoineryServerServices } from './services.js';

/** Offers the cures of what is found in the stretch that an editor asks about. */
export class JoineryCodeActionProvider implements CodeActionProvider {
  private trial: Trial | undefined;

  constructor(private readonly services: JoineryServerServices) {}

  async getCodeActions(
    document: LangiumDocument,
    { range, context }: CodeActionParams,
    cancelToken?: Cancellation.CancellationToken,
  ): Promise<CodeAction[]> {
    if (context.only && !context.only.some((kind) => CodeActionKind.QuickFix.startsWith(kind))) return [];
    const { thickness, joinery } = this.services.editor.Settings.now;
    const options = { thickness, joinery, isOver: () => cancelToken?.isCancellationRequested ?? false };
    const { version } = document.textDocument;
    const here = this.services.editor.Examinations.of(document).findings.filter((finding) =>
      touches(finding, document, range),
    );
    if (here.length === 0) return [];
    this.trial ??= new Trial(this.services);
    const actions: CodeAction[] = [];
    for (const finding of here) {
      const diagnostics = context.diagnostics.filter((diagnostic) => isAbout(diagnostic, finding, document));
      for (const { title, edits, preferred } of await curesOf(finding, document, this.services, this.trial, options)) {
        const known = actions.find((action) => action.title === title);
        if (known) known.diagnostics?.push(...diagnostics);
        else
          actions.push({
            title,
            kind: CodeActionKind.QuickFix,
            diagnostics: [...diagnostics],
            ...(preferred ? { isPreferred: true } : {}),
            edit: this.workspaceEdit(edits),
          });
      }
    }
    // What was worked out for a text that has gone on meanwhile would land in the wrong places.
    return document.textDocument.version === version ? actions : [];
  }

  private workspaceEdit(edits: readonly FileEdit[]): WorkspaceEdit {
    const changes: NonNullable<WorkspaceEdit['changes']> = {};
    for (const { uri, start, end, text } of edits) {
      const own = this.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument;
      if (!own) continue;
      changes[uri] = [
        ...(changes[uri] ?? []),
        { range: { start: own.positionAt(start), end: own.positionAt(end) }, newText: text },
      ];
    }
    return { changes };
  }
}

/** A finding is shown in the first line of what it is about. */
function touches({ source }: Finding, { textDocument }: LangiumDocument, range: Range): boolean {
  const [start, end] = [textDocument.offsetAt(range.start), textDocument.offsetAt(range.end)];
  const line = textDocument.getText().slice(source.start, source.end).split(/\r?\n/, 1)[0] ?? '';
  return source.start <= end && start <= source.start + line.length;
}

function isAbout({ code, range }: Diagnostic, finding: Finding, { textDocument }: LangiumDocument): boolean {
  return code === finding.code && textDocument.offsetAt(range.start) === finding.source.start;
}
