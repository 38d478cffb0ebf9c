import { isPartRef } from '../../generated/ast.js';
import type { Cure, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { nodeOf } from '../support/node.js';
import { instead } from '../support/place.js';

/** Writes which of several like parts is meant. */
export const partNumber: Fix = {
  name: 'part-number',
  codes: ['one-part-wanted', 'no-such-part'],
  most: 6,
  mayFollow: hiddenUntilRead(READ),
  *offer(about): Iterable<Cure> {
    const { candidates } = about.finding.data ?? {};
    const ref = nodeOf(about, isPartRef);
    if (!ref || !Array.isArray(candidates)) return;
    const asked = Number(ref.index ?? 1);
    const distance = (id: string) => Math.abs(Number(/\d+$/.exec(id)?.[0] ?? 0) - asked);
    const nearestFirst = [...(candidates as readonly string[])].sort((a, b) => distance(a) - distance(b));
    for (const id of nearestFirst) yield { title: `Write ${id}`, edits: [instead(ref, id)] };
  },
};
