import type { FittedPart } from '@dryfit/engine';
import type { PartRef } from '../generated/ast.js';
import { wordsOfRef } from '../interpret/words.js';
import type { Fitted } from './hint.js';

/** The parts of the fit that some references name: one of like parts, or all of them. */
export function partsOf(refs: readonly (PartRef | undefined)[], { result }: Pick<Fitted, 'result'>): FittedPart[] {
  const names = new Set(refs.map((ref) => wordsOfRef(ref)));
  return result.fit.parts.filter(({ id, kind }) => names.has(id) || names.has(kind));
}
