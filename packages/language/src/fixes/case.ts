import type { Finding } from '@dryfit/engine';
import { type LangiumDocument, URI } from 'langium';
import type { ExamineOptions } from '../findings/examine.js';
import { type File, isCabinet, isJob } from '../generated/ast.js';
import { unitOf } from '../interpret/units.js';
import { fileOf } from '../scope/imports.js';
import type { JoineryServices } from '../services.js';
import type { Case } from './fix.js';

/** What fixes may look at for a finding of a document; undefined if its text is not there to be changed. */
export function caseOf(
  found: Finding,
  shown: LangiumDocument,
  services: JoineryServices,
  { thickness, joinery }: ExamineOptions = {},
): Case | undefined {
  const finding = asTheCabinetTellsIt(found, shown);
  const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(finding.source.uri));
  const file = fileOf(document);
  if (!document || !file) return undefined;
  const cabinet = file.entries
    .filter(isCabinet)
    .find(({ $cstNode: cst }) => cst && holds(cst.offset, cst.end, finding));
  const result = cabinet && joinery !== false ? services.joinery.Fits.of(cabinet, thickness).result : undefined;
  return { finding, document, file, unit: unitOf(file), services, cabinet, result };
}

const holds = (start: number, end: number, { source }: Finding): boolean => start <= source.start && source.end <= end;

/** What a job's line brings about is shown at the line; the place in the cabinet is then its first related one. */
function asTheCabinetTellsIt(finding: Finding, document: LangiumDocument): Finding {
  const [place, ...related] = finding.related;
  const lines = (fileOf(document) as File | undefined)?.entries.filter(isJob).flatMap((job) => job.lines) ?? [];
  const atLine = lines.some(
    ({ $cstNode: cst }) => cst?.offset === finding.source.start && cst.end === finding.source.end,
  );
  const ofCabinet = finding.about.statement !== undefined || finding.about.parts !== undefined;
  return atLine && ofCabinet && place ? { ...finding, source: place.source, related } : finding;
}
