import type { Shop, Units } from '@dryfit/engine';
import type { LangiumDocument, URI } from 'langium';
import { type Examination, type ExamineOptions, examine } from './findings/examine.js';
import { unitOf } from './interpret/units.js';
import type { createJoineryServices } from './module.js';
import { fileOf } from './scope/imports.js';

/** A file and all that is to be said about it. */
export interface ExaminedFile extends Examination {
  readonly uri: string;
}

/**
 * Reads files and what they import through the file system of the services, and examines each.
 * @throws what the file system throws for a file of the list that cannot be read; imports that cannot be read are
 * findings.
 */
export async function examineFiles(
  uris: readonly URI[],
  { shared, joinery }: ReturnType<typeof createJoineryServices>,
  options: ExamineOptions & { readonly onExamined?: (done: number, of: number) => void } = {},
): Promise<readonly ExaminedFile[]> {
  const { LangiumDocuments, DocumentBuilder } = shared.workspace;
  const documents: LangiumDocument[] = [];
  for (const uri of uris) documents.push(await LangiumDocuments.getOrCreateDocument(uri));
  await DocumentBuilder.build(documents);
  return documents.map((document, index) => {
    const examination = examine(document, joinery, options);
    options.onExamined?.(index + 1, documents.length);
    return { ...examination, uri: document.uri.toString() };
  });
}

/** The text of a file that has been read, an imported one or a part of the library as well. */
export function textOfFile(
  uri: URI,
  { shared }: Pick<ReturnType<typeof createJoineryServices>, 'shared'>,
): string | undefined {
  return shared.workspace.LangiumDocuments.getDocument(uri)?.textDocument.getText();
}

/** What the workshop of a file keeps, its own entries and those of what it imports; undefined for a file that has not been read. */
export function shopOfFile(
  uri: URI,
  { shared, joinery }: Pick<ReturnType<typeof createJoineryServices>, 'shared' | 'joinery'>,
): Shop | undefined {
  const document = shared.workspace.LangiumDocuments.getDocument(uri);
  const file = document && fileOf(document);
  return file && joinery.joinery.Shops.of(file);
}

/** Units of the plain numbers of a file, an imported one or a part of the library as well; undefined for one that has not been read. */
export function unitsOfFile(
  uri: URI,
  { shared }: Pick<ReturnType<typeof createJoineryServices>, 'shared'>,
): Units | undefined {
  const document = shared.workspace.LangiumDocuments.getDocument(uri);
  const file = document && fileOf(document);
  return file && unitOf(file);
}
