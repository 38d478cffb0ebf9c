import type { LangiumDocument, URI } from 'langium';
import { type Examination, type ExamineOptions, examine } from '../findings/examine.js';
import { isLibrary } from '../library/library.js';
import { createJoineryServices } from '../module.js';
import type { JoineryServices } from '../services.js';
import { applied } from './apply.js';
import type { FileEdit } from './fix.js';

/**
 * Tries edits on copies of the files: the language once more, over the same texts, where nobody is looking. Made when
 * first asked; what an edit does not touch is neither read nor worked out again.
 */
export class Trial {
  private readonly copy: JoineryServices;
  private edits: readonly FileEdit[] = [];
  /** One trial at a time: they share their copies. */
  private last: Promise<unknown> = Promise.resolve();

  constructor(private readonly original: JoineryServices) {
    const files = original.shared.workspace.FileSystemProvider;
    this.copy = createJoineryServices({
      fileSystemProvider: () =>
        Object.assign(Object.create(files) as typeof files, {
          readFile: async (uri: URI) => applied(await this.textOf(uri), uri.toString(), this.edits),
        }),
    }).joinery;
  }

  /** What would be said of a document with the edits made. */
  examine(document: LangiumDocument, edits: readonly FileEdit[], options: ExamineOptions = {}): Promise<Examination> {
    const next = this.last.then(() => this.run(document.uri, edits, options));
    this.last = next.catch(() => undefined);
    return next;
  }

  private async run(uri: URI, edits: readonly FileEdit[], options: ExamineOptions): Promise<Examination> {
    this.edits = edits;
    const { LangiumDocuments, DocumentBuilder } = this.copy.shared.workspace;
    const changed: URI[] = [];
    const gone: URI[] = [];
    for (const { uri: own, textDocument } of LangiumDocuments.all.toArray()) {
      if (isLibrary(own)) continue;
      const original = this.original.shared.workspace.LangiumDocuments.getDocument(own);
      if (!original) gone.push(own);
      else if (textDocument.getText() !== applied(original.textDocument.getText(), own.toString(), edits))
        changed.push(own);
    }
    if (changed.length + gone.length > 0) await DocumentBuilder.update(changed, gone);
    const copy = await LangiumDocuments.getOrCreateDocument(uri);
    await DocumentBuilder.build([copy], { validation: false });
    return examine(copy, this.copy, options);
  }

  private async textOf(uri: URI): Promise<string> {
    const document = this.original.shared.workspace.LangiumDocuments.getDocument(uri);
    return document?.textDocument.getText() ?? this.original.shared.workspace.FileSystemProvider.readFile(uri);
  }
}
