import { type LangiumDocument, URI } from 'langium';
import { type Examination, type ExamineOptions, examine } from '../findings/examine.js';
import { isLibrary } from '../library/library.js';
import { createJoineryServices } from '../module.js';
import type { JoineryServices } from '../services.js';
import { applied } from './apply.js';
import type { Change } from './fix.js';

/**
 * Tries edits on copies of the files: the language once more, over the same texts, where nobody is looking. Made when
 * first asked; what an edit does not touch is neither read nor worked out again.
 */
export class Trial {
  private readonly copy: JoineryServices;
  private change: Change = { edits: [] };
  /** One trial at a time: they share their copies. */
  private last: Promise<unknown> = Promise.resolve();

  constructor(private readonly original: JoineryServices) {
    const files = original.shared.workspace.FileSystemProvider;
    this.copy = createJoineryServices({
      fileSystemProvider: () =>
        Object.assign(Object.create(files) as typeof files, {
          readFile: async (uri: URI) => applied(await this.textOf(uri), uri.toString(), this.change.edits),
        }),
    }).joinery;
    // What is to be said of a text is examined below; nobody sees what Langium would say of it.
    this.copy.shared.workspace.DocumentBuilder.updateBuildOptions = { validation: false };
  }

  /** What would be said of a document with the change made. */
  examine(document: LangiumDocument, change: Change, options: ExamineOptions = {}): Promise<Examination> {
    const next = this.last.then(() => this.run(document.uri, change, options));
    this.last = next.catch(() => undefined);
    return next;
  }

  private async run(uri: URI, change: Change, options: ExamineOptions): Promise<Examination> {
    this.change = change;
    const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = this.copy.shared.workspace;
    const changed: URI[] = [];
    const gone: URI[] = [];
    for (const { uri: own, textDocument } of LangiumDocuments.all.toArray()) {
      if (isLibrary(own)) continue;
      const original = this.original.shared.workspace.LangiumDocuments.getDocument(own);
      const before = original?.textDocument.getText() ?? this.madeFor(own);
      if (before === undefined) gone.push(own);
      else if (textDocument.getText() !== applied(before, own.toString(), change.edits)) changed.push(own);
    }
    for (const { uri: made, text } of change.newFiles ?? []) {
      const own = URI.parse(made);
      if (LangiumDocuments.hasDocument(own)) continue;
      LangiumDocuments.addDocument(LangiumDocumentFactory.fromString(text, own));
      changed.push(own);
    }
    if (changed.length + gone.length > 0) await DocumentBuilder.update(changed, gone);
    const copy = await LangiumDocuments.getOrCreateDocument(uri);
    await DocumentBuilder.build([copy], { validation: false });
    return examine(copy, this.copy, options);
  }

  private async textOf(uri: URI): Promise<string> {
    const document = this.original.shared.workspace.LangiumDocuments.getDocument(uri);
    return (
      document?.textDocument.getText() ??
      this.madeFor(uri) ??
      this.original.shared.workspace.FileSystemProvider.readFile(uri)
    );
  }

  /** The text of a file that the change on trial makes. */
  private madeFor(uri: URI): string | undefined {
    return this.change.newFiles?.find((file) => file.uri === uri.toString())?.text;
  }
}
