import { isJob } from '../generated/ast.js';
import type { Knowledge } from '../hover/knowledge.js';
import { fileOf } from '../scope/imports.js';
import type { JoineryServerServices } from './services.js';

/** What hovers ask for, out of the server's services. */
export function knowledgeOf({ shared, joinery, references, editor }: JoineryServerServices): Knowledge {
  const { LangiumDocuments } = shared.workspace;
  return {
    fitted: (cabinet) => editor.LastGood.of(cabinet),
    shop: (file) => joinery.Shops.of(file),
    jobLines: (cabinet) =>
      LangiumDocuments.all
        .flatMap((document) => fileOf(document)?.entries.filter(isJob) ?? [])
        .flatMap((job) => job.lines.filter((line) => line.cabinet?.ref === cabinet))
        .toArray(),
    declaration: (name) => references.References.findDeclarations(name)[0],
  };
}
