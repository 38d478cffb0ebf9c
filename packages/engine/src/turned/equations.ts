import { type Builder, negative } from '../sizes/builder.js';
import type { JointStatement, PartSpec, Spec } from '../spec/spec.js';
import { legFrom } from './cant.js';
import { cantUnder, mitredEnd, namedHosts } from './ends.js';

/**
 * What a mitre with a turned part says of the parts beside it: the outer planes of the two meet in the end of the cant,
 * so the host's outer side lies in the side of the canted part there, and its end as far from the corner as the cant
 * begins. Exact: the root that the turned part is long takes no part in it.
 */
export function addTurnedMitre(build: Builder, spec: Spec, joint: JointStatement, part: PartSpec): void {
  const cant = cantUnder(spec, part);
  const level = part.on?.part;
  if (!cant || level === undefined) return;
  for (const named of namedHosts(joint)) {
    const met = mitredEnd(cant, build.planes.part(named.host), named);
    const leg = met && legFrom(cant, met.end);
    if (!met || !leg) continue;
    const words = `${met.host} mitred to ${part.id} at the end of ${level}.cant`;
    build.same(joint.id, build.side(met.host, met.outer), build.side(level, met.outer), words);
    build.beyond(joint.id, build.side(met.host, met.end), build.side(level, met.end), met.end, negative(leg), words);
  }
}
