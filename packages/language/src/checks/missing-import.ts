import { list, say } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import { reporter } from '../findings/report.js';
import { isLibrary, libraryNames } from '../library/library.js';
import { fileOf, importedUri } from '../scope/imports.js';
import type { JoineryServices } from '../services.js';
import type { JoineryDocumentBuilder } from '../workspace/document-builder.js';
import type { FileCheck } from './file-check.js';

/** An import names a file that cannot be read, so that nothing of it is known. */
export const missingImport = reporter('missing-import', 'error');

export const missingImports: FileCheck = ({ file, document, places, services }) =>
  file.imports.flatMap((line) => {
    const uri = importedUri(document.uri, line);
    // Without a path at all the parser has said so.
    if (line.path === undefined) return [];
    if (!uri) {
      const source = places.property(line, 'path');
      const cure = say`Write its path from the folder of this file, as in "shop.joinery".`;
      return [missingImport({ source, message: say`this import names no file`, cure })];
    }
    if (services.shared.workspace.LangiumDocuments.hasDocument(uri)) return [];
    const why = (services.shared.workspace.DocumentBuilder as JoineryDocumentBuilder).whyUnreadable(uri);
    const parts = libraryNames.map((name) => `"dryfit:${name}"`);
    const message = isLibrary(uri)
      ? say`the built-in library has no part ${line.path}`
      : say`${line.path} cannot be read: ${why ?? 'there is no such file beside this one'}`;
    const cure = isLibrary(uri)
      ? say`It has ${list(parts)}.`
      : why !== undefined
        ? say`Mend that file, or import another.`
        : line.path.endsWith('.joinery')
          ? say`Write the path from the folder of this file.`
          : say`Write the whole name, as in "${line.path}.joinery".`;
    return [missingImport({ source: places.property(line, 'path'), message, cure })];
  });

/** True if this file or one it sees imports something that is not there, so that it cannot know what it lacks. */
export function lacksImports(document: LangiumDocument, services: JoineryServices): boolean {
  const file = fileOf(document);
  if (!file) return false;
  return services.joinery.Files.layers(file).some((layer) =>
    layer.imports.some((line) => {
      const uri = layer.$document && importedUri(layer.$document.uri, line);
      return uri !== undefined && !services.shared.workspace.LangiumDocuments.hasDocument(uri);
    }),
  );
}
