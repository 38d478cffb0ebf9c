import { AXES, type FittedPart, highSide, isFace, lowSide, type Side } from '@dryfit/engine';
import type { Case, Cure, Fix } from './fix.js';
import { writeInCabinet } from './support/braces.js';
import { because, MILLING, SIZES } from './support/follow.js';

/** Joins a part to one that it touches. */
export const join: Fix = {
  name: 'join',
  codes: ['part-unattached'],
  most: 2,
  mayFollow: because(
    'the new joint has connectors and a reference still to be chosen',
    ...MILLING,
    ...SIZES,
    'no-connectors',
    'reference-missing',
  ),
  *offer(about): Iterable<Cure> {
    const { finding, result, cabinet } = about;
    const parts = result?.fit.parts ?? [];
    const group = new Set(finding.about.parts ?? []);
    if (!cabinet) return;
    for (const id of group) {
      const own = parts.find((part) => part.id === id);
      if (!own) continue;
      for (const other of parts) {
        if (group.has(other.id)) continue;
        for (const { enters, host, side } of touching(own, other)) {
          const line = `butt ${enters.id} to ${host.id}.${side}${needsNone(about) ? ' { connect none "screwed" }' : ''}`;
          yield { title: `Join them: ${line}`, edits: [writeInCabinet(cabinet, line)] };
        }
      }
    }
  },
};

const needsNone = ({ result }: Case): boolean => result?.spec.connect === undefined;

/** The sides at which two parts touch, an edge of the one entering the other's face first. */
function touching(one: FittedPart, two: FittedPart) {
  const found: { enters: FittedPart; host: FittedPart; side: Side }[] = [];
  const [a, b] = [one.box, two.box];
  if (!a || !b) return [];
  for (const axis of AXES) {
    const [low, high] = [lowSide(axis), highSide(axis)];
    if (a.hi[axis].equals(b.lo[axis]))
      found.push({ enters: one, host: two, side: low }, { enters: two, host: one, side: high });
    if (b.hi[axis].equals(a.lo[axis]))
      found.push({ enters: one, host: two, side: high }, { enters: two, host: one, side: low });
  }
  const rank = ({ host, side }: { host: FittedPart; side: Side }): number => (isFace(side, host.attitude) ? 0 : 1);
  return found.sort((a, b) => rank(a) - rank(b));
}
