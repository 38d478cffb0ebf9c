import type { Finding } from '@dryfit/engine';
import { Cancellation, type LangiumDocument } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
  type Diagnostic,
  type Range,
} from 'vscode-languageserver-protocol';
import { safeChange } from '../fixes/safe.js';
import { Cures } from './cures.js';
import { CuresAhead } from './cures-ahead.js';
import type { JoineryServerServices } from './services.js';
import { workspaceEdit } from './workspace-edits.js';

/** Everything that can be cured without looking, at once. */
const FIX_ALL: CodeActionKind = `${CodeActionKind.SourceFixAll}.dryfit`;

/** The kinds of action that are offered. */
export const ACTION_KINDS: readonly CodeActionKind[] = [CodeActionKind.QuickFix, FIX_ALL];

/**
 * Offers the cures of what is found in the stretch that an editor asks about, and all safe ones at once to whoever
 * asks for that. It is asked once the text at hand has been examined; what the editor takes the findings to be may be
 * older and is only used to tell which of them an action is for.
 */
export class JoineryCodeActionProvider implements CodeActionProvider {
  private readonly cures: Cures;
  private readonly ahead: CuresAhead;

  constructor(private readonly services: JoineryServerServices) {
    this.cures = new Cures(services);
    this.ahead = new CuresAhead(services, this.cures);
  }

  async getCodeActions(
    document: LangiumDocument,
    { range, context: { only, diagnostics, triggerKind } }: CodeActionParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<CodeAction[]> {
    const byItself = triggerKind === CodeActionTriggerKind.Automatic;
    if (byItself) void this.cures.prepare(document).catch(() => undefined);
    else this.ahead.stop();
    const wanted = (kind: string): boolean => only === undefined || only.some((one) => isWithin(kind, one));
    const actions = [
      ...(wanted(CodeActionKind.QuickFix) ? await this.quickFixes(document, range, diagnostics, token) : []),
      // Nobody wants it beside the fixes of one place.
      ...(only && wanted(FIX_ALL) ? await this.fixAll(document, token) : []),
    ];
    const at = document.textDocument.offsetAt(range.start);
    void this.ahead.around(document, at).catch(() => undefined);
    return actions;
  }

  private async quickFixes(
    document: LangiumDocument,
    range: Range,
    told: readonly Diagnostic[],
    token: Cancellation.CancellationToken,
  ): Promise<CodeAction[]> {
    const actions: CodeAction[] = [];
    const { findings } = this.services.editor.Examinations.of(document);
    for (const finding of findings.filter((one) => touches(one, document, range))) {
      const diagnostics = told.filter((diagnostic) => isAbout(diagnostic, finding, document));
      for (const cure of await this.cures.of(finding, document, token)) {
        const { title, preferred } = cure;
        const known = actions.find((action) => action.title === title);
        if (known) known.diagnostics?.push(...diagnostics);
        else
          actions.push({
            title,
            kind: CodeActionKind.QuickFix,
            diagnostics: [...diagnostics],
            ...(preferred ? { isPreferred: true } : {}),
            edit: workspaceEdit(cure, this.services.shared.workspace.LangiumDocuments),
          });
      }
    }
    return actions;
  }

  private async fixAll(document: LangiumDocument, token: Cancellation.CancellationToken): Promise<CodeAction[]> {
    const { findings } = this.services.editor.Examinations.of(document);
    if (findings.length === 0) return [];
    const options = this.cures.options(() => token.isCancellationRequested);
    const change = await safeChange(findings, document, this.services, this.cures.trial, options);
    if (!change) return [];
    const { LangiumDocuments } = this.services.shared.workspace;
    return [{ title: change.title, kind: FIX_ALL, edit: workspaceEdit(change, LangiumDocuments) }];
  }
}

/** A kind that is another or one of its kinds. */
const isWithin = (kind: string, other: string): boolean => kind === other || kind.startsWith(`${other}.`);

/** A finding is shown in the first line of what it is about. */
function touches({ source }: Finding, { textDocument }: LangiumDocument, range: Range): boolean {
  const [start, end] = [textDocument.offsetAt(range.start), textDocument.offsetAt(range.end)];
  const line = textDocument.getText().slice(source.start, source.end).split(/\r?\n/, 1)[0] ?? '';
  return source.start <= end && start <= source.start + line.length;
}

function isAbout({ code, range }: Diagnostic, finding: Finding, { textDocument }: LangiumDocument): boolean {
  return code === finding.code && textDocument.offsetAt(range.start) === finding.source.start;
}
