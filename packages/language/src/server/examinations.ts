import { type Cancellation, type LangiumDocument, URI } from 'langium';
import { type Examination, type ExamineOptions, examine, examineWhileTyping } from '../findings/examine.js';
import type { JoineryServerServices } from './services.js';

/** What is to be said of documents under the settings of the client, kept until any text or setting changes. */
export class Examinations {
  private readonly kept = new Map<string, Examination>();

  constructor(private readonly services: JoineryServerServices) {
    services.shared.workspace.DocumentBuilder.onUpdate(() => this.kept.clear());
    services.editor.Settings.onChange(() => this.kept.clear());
  }

  get options(): ExamineOptions {
    const { thickness, joinery, severity } = this.services.editor.Settings.now;
    return { thickness, joinery, severity };
  }

  /** Of a document that has been linked. */
  of(document: LangiumDocument): Examination {
    const key = document.uri.toString();
    const kept = this.kept.get(key);
    if (kept) return kept;
    const examination = examine(document, this.services, this.options);
    this.kept.set(key, examination);
    return examination;
  }

  /** The same, giving way between cabinets to whatever waits, such as the next key. */
  async whileTyping(document: LangiumDocument, token: Cancellation.CancellationToken): Promise<Examination> {
    const examination = await examineWhileTyping(document, this.services, this.options, token);
    this.kept.set(document.uri.toString(), examination);
    return examination;
  }

  /** The text that a place of a finding is in. */
  textOf(uri: string): LangiumDocument['textDocument'] | undefined {
    return this.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument;
  }
}
