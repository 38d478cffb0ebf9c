import { axisOf, type FitResult, isHigh, lowSide, type Side } from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { block, paragraphs, plain } from './markdown.js';

/** Where a side of a part lies, and for a single part the facts that put it there. */
export function planeHover(result: FitResult, name: string, side: Side, lengths: Lengths): string | undefined {
  const parts = result.fit.parts.filter((part) => part.id === name || part.kind === name);
  const axis = axisOf(side);
  const lines = parts.map(({ id, box }) => {
    const at = box && (isHigh(side) ? box.hi : box.lo)[axis];
    const where = at ? `${lengths.unit(at)} from the ${lowSide(axis)} of the cabinet` : 'not fixed yet';
    return `**${plain(`${id}.${side}`)}**: ${where}`;
  });
  const [part] = parts;
  if (part === undefined) return undefined;
  const reasons = parts.length > 1 ? [] : result.place(part.id, side);
  return paragraphs(...lines, reasons.length === 0 ? '' : block(reasons.map(({ text }) => text)));
}
