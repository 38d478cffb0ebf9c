import type { LangiumDocument } from 'langium';
import type { JoineryServices } from '../../services.js';
import type { Change } from '../fix.js';

/** The documents among some whose findings a change may alter: those it touches, and those that import such. */
export function dependantsOf(
  { edits, newFiles = [] }: Change,
  among: readonly LangiumDocument[],
  services: JoineryServices,
): readonly LangiumDocument[] {
  const touched = new Set([...edits, ...newFiles].map(({ uri }) => uri));
  const { IndexManager } = services.shared.workspace;
  return among.filter((document) => touched.has(document.uri.toString()) || IndexManager.isAffected(document, touched));
}
