import { axisOf, SIDES, type Side } from '@dryfit/engine';
import { isSide } from './head.js';
import { sidesAcross } from './planes.js';
import type { Situation } from './situation.js';

/** What a joint's slots can be measured from: the faces of the part whose edge is milled; of a mitre, outside or inside. */
export function referenceWords(situation: Situation): readonly string[] {
  const { head, axes } = situation;
  if (head?.verb === 'mitre') return ['outer', 'inner'];
  if (axes === undefined || axes.across.length === 0) return [...SIDES, 'outer', 'inner'];
  const faces = axes.across.flatMap(sidesAcross);
  const fixed = situation.facts.flatMap((fact): readonly (Side | undefined)[] =>
    fact.$type === 'FlushFact' ? fact.sides : fact.$type === 'SideFact' ? [fact.side] : [],
  );
  // A corner whose one face is told has an outer and an inner face, too.
  const corner = new Set(fixed.filter((side) => side !== undefined && faces.includes(side))).size === 1;
  return corner ? [...faces, 'outer', 'inner'] : faces;
}

const WAYS: Readonly<Record<string, string>> = { above: 'z', below: 'z', in: 'y', behind: 'y', left: 'x', right: 'x' };

/** A word for a direction that the side placed can be moved in; those after the first follow it. */
export function towardFits(word: string, { begun }: Situation): boolean {
  const side = begun.findLast((other, index) => isSide(other) && begun[index - 1] !== ',' && begun[index + 1] !== '.');
  return !isSide(side) || WAYS[word] === undefined || WAYS[word] === axisOf(side);
}
