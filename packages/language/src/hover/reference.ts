import { AstUtils } from 'langium';
import { type End, isCabinet, isPlane, type PartRef, type Plane } from '../generated/ast.js';
import { cabinetOfPart } from '../interpret/order.js';
import { wordsOfRef } from '../interpret/words.js';
import type { Knowledge } from './knowledge.js';
import type { Lengths } from './lengths.js';
import { stale } from './markdown.js';
import { partHover } from './part.js';
import { planeHover } from './plane.js';
import { wordLine } from './words.js';

/** A part where it is used: `shelf`, or one of several, `shelf 2`. */
export function partRefHover(ref: PartRef, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const cabinet = cabinetOfPart(ref);
  const fitted = cabinet && knowledge.fitted(cabinet);
  return fitted && stale(partHover(fitted.result, wordsOfRef(ref), lengths, knowledge.picture), fitted);
}

/** A side of a part: where it lies, and what its word means. */
export function endHover(end: End | Plane, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const { ref, side } = end;
  if (ref === undefined || side === undefined) return undefined;
  const cabinet = AstUtils.getContainerOfType(end, isCabinet);
  const fitted = isPlane(end) && end.of !== undefined ? undefined : cabinet && knowledge.fitted(cabinet);
  const where = fitted && planeHover(fitted.result, wordsOfRef(ref), side, lengths);
  return where === undefined || fitted === undefined ? wordLine(side, 'Side') : stale(where, fitted);
}
