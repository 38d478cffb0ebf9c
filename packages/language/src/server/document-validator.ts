import { Cancellation, type DocumentValidator, type LangiumDocument, type ValidationOptions } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import { shown } from '../findings/shown.js';
import { toDiagnostic } from './diagnostics.js';
import type { JoineryServerServices } from './services.js';

/** Every finding about a file in the place of what Langium would say of it: the editor shows what the command line prints. */
export class JoineryDocumentValidator implements DocumentValidator {
  constructor(private readonly services: JoineryServerServices) {}

  async validateDocument(
    document: LangiumDocument,
    _: ValidationOptions = {},
    token = Cancellation.CancellationToken.None,
  ): Promise<Diagnostic[]> {
    const { Examinations, Settings } = this.services.editor;
    const examination = await Examinations.whileTyping(document, token);
    const text = document.textDocument.getText();
    return examination.findings.map((finding) =>
      toDiagnostic(shown(finding, examination, text), document.textDocument, {
        textOf: (uri) => Examinations.textOf(uri),
        checkPages: Settings.clientShowsPages,
      }),
    );
  }
}
