import type { LangiumDocument } from 'langium';
import { isWhole } from '../fits/last-good.js';
import { isCabinet, isJob } from '../generated/ast.js';
import { unitOf } from '../interpret/units.js';
import { fileOf } from '../scope/imports.js';
import type { FitState } from './protocol.js';

/** How a file stands, out of what its last check has found. */
export function fitStateOf(document: LangiumDocument, version?: number): FitState {
  const file = fileOf(document);
  const found = document.diagnostics ?? [];
  const count = (wanted: number) => found.filter(({ severity }) => severity === wanted).length;
  return {
    uri: document.uri.toString(),
    version,
    state: !isWhole(document) ? 'broken' : found.length > 0 ? 'findings' : 'fits',
    errors: count(1),
    warnings: count(2),
    units: file ? unitOf(file) : 'mm',
    cabinets: file?.entries.filter(isCabinet).map(({ name }) => name) ?? [],
    jobs: file?.entries.filter(isJob).flatMap(({ name }) => name ?? []) ?? [],
  };
}
