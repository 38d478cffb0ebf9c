import type { Severity } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver-types';
import type { Shown } from '../findings/shown.js';
import { checkPage } from './protocol.js';

type Text = LangiumDocument['textDocument'];

/** What a diagnostic is made with beside the finding. */
export interface Showing {
  /** The text of another file; places in files that are not there are left out. */
  readonly textOf: (uri: string) => Text | undefined;
  /** The client can show the page of a check. */
  readonly checkPages: boolean;
}

/** A finding in the words of the editor protocol. */
export function toDiagnostic(finding: Shown, text: Text, { textOf, checkPages }: Showing): Diagnostic {
  const { code, severity, message, place, related, faded, data } = finding;
  return {
    source: 'dryfit',
    code,
    severity: SEVERITY[severity],
    message,
    range: rangeIn(text, place),
    relatedInformation: related.flatMap(({ message, place }) => {
      const other = textOf(place.uri);
      return other ? [{ message, location: { uri: place.uri, range: rangeIn(other, place) } }] : [];
    }),
    data,
    ...(faded ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(checkPages ? { codeDescription: { href: checkPage(code) } } : {}),
  };
}

const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

const rangeIn = (text: Text, { start, end }: { readonly start: number; readonly end: number }) => ({
  start: text.positionAt(start),
  end: text.positionAt(end),
});
