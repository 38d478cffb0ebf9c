import { Cancellation, interruptAndCheck } from 'langium';
import type { FileOperationHandler, LangiumSharedServices } from 'langium/lsp';
import type {
  FileOperationRegistrationOptions,
  RenameFilesParams,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { isLibrary } from '../library/library.js';
import { importEdits } from '../rename/moved-files.js';
import { fileOf } from '../scope/imports.js';
import { toTextEdits } from './convert.js';

const FILES_AND_FOLDERS: FileOperationRegistrationOptions = {
  filters: [{ pattern: { glob: '**/*.joinery', matches: 'file' } }, { pattern: { glob: '**/*', matches: 'folder' } }],
};

/** Imports follow the files they name, before these get another name or place. */
export class JoineryFileOperations implements FileOperationHandler {
  readonly fileOperationOptions = { willRename: FILES_AND_FOLDERS };

  constructor(private readonly services: LangiumSharedServices) {}

  async willRenameFiles({ files }: RenameFilesParams): Promise<WorkspaceEdit | null> {
    const moves = files.map(({ oldUri, newUri }) => ({ from: oldUri, to: newUri }));
    const changes: NonNullable<WorkspaceEdit['changes']> = {};
    for (const document of this.services.workspace.LangiumDocuments.all) {
      await interruptAndCheck(Cancellation.CancellationToken.None);
      const file = isLibrary(document.uri) ? undefined : fileOf(document);
      const edits = file ? importEdits(file, moves) : [];
      if (edits.length > 0) changes[document.uri.toString()] = toTextEdits(document, edits);
    }
    return Object.keys(changes).length > 0 ? { changes } : null;
  }
}
