import { isWhole } from '../fits/last-good.js';
import { isJob, type JobLine } from '../generated/ast.js';
import type { Fitted, Knowledge } from '../hover/knowledge.js';
import { readOverrides } from '../interpret/job.js';
import { unitOf } from '../interpret/units.js';
import { fileOf, importedUri } from '../scope/imports.js';
import type { JoineryServerServices } from './services.js';

/** What hovers ask for, out of the server's services. */
export function knowledgeOf(services: JoineryServerServices): Knowledge {
  const { shared, joinery, references, editor } = services;
  const { LangiumDocuments } = shared.workspace;
  return {
    fitted: (cabinet) => (editor.Settings.now.joinery ? editor.LastGood.soon(cabinet) : undefined),
    made: (line) => madeOf(line, services),
    imported: (line) => {
      const here = line.$container.$document?.uri;
      const there = here && importedUri(here, line);
      return there && fileOf(LangiumDocuments.getDocument(there));
    },
    shop: (file) => joinery.Shops.of(file),
    jobLines: (cabinet) =>
      LangiumDocuments.all
        .flatMap((document) => fileOf(document)?.entries.filter(isJob) ?? [])
        .flatMap((job) => job.lines.filter((line) => line.cabinet?.ref === cabinet))
        .toArray(),
    declaration: (name) => references.References.findDeclarations(name)[0],
  };
}

const WHOLE = { stale: false, cabinets: [] } as const;

/** A cabinet as a line makes it; where its text is broken, as the same values last made it. */
function madeOf(line: JobLine, { joinery, editor }: JoineryServerServices): Fitted | undefined {
  const cabinet = line.cabinet?.ref;
  const document = cabinet?.$container.$document;
  if (cabinet === undefined || document === undefined || !editor.Settings.now.joinery) return undefined;
  const { stale, cabinets } = isWhole(document) ? WHOLE : editor.LastGood.ofFile(document);
  if (!stale) {
    const made = joinery.Fits.line(line, editor.Settings.now.thickness);
    return made && { result: made.variant.result, stale: false };
  }
  const given = readOverrides(line, unitOf(line.$container.$container), () => undefined);
  const before = cabinets.find(
    ({ result: { spec } }) =>
      spec.name === cabinet.name &&
      spec.parameters.every(({ name, value, overridden }) => given.get(name)?.value.equals(value) ?? !overridden),
  );
  return before && { result: before.result, stale: true };
}
