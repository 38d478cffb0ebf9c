import { opposite, SIDES, type Side, say } from '@dryfit/engine';
import { isOuterFact, isReferenceFact } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { jointOf, setFact, titled } from './support/facts.js';
import { because, MILLING } from './support/follow.js';
import { without } from './support/place.js';

/** Says which face a joint's slots are measured from. */
export const reference: Fix = {
  name: 'reference',
  codes: [
    'reference-missing',
    'reference-not-a-face',
    'references-differ',
    'flush-not-reference',
    'step-at-joint',
    'stop-out-of-range',
    'stop-not-on-step',
    'ends-differ',
    'mitre-no-room',
  ],
  mayFollow: because('nothing is milled until the reference is known', ...MILLING),
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    const known = joint.facts.find(isReferenceFact);
    if (about.finding.code === 'flush-not-reference' && known)
      yield { title: 'Take the reference out, so that it follows the flush face', edits: [without(known)] };
    for (const side of sides(about)) {
      yield {
        title: titled(say`Measure from the ${side} face: reference ${side}`, about.unit),
        edits: [setFact(joint, `reference ${side}`, isReferenceFact)],
        preferred: ['flush-not-reference', 'step-at-joint'].includes(about.finding.code),
      };
    }
    if (about.finding.code === 'reference-missing' && joint.verb === 'mitre')
      for (const side of SIDES)
        yield { title: `Name the outer side: outer ${side}`, edits: [setFact(joint, `outer ${side}`, isOuterFact)] };
  },
};

function sides({ finding }: Case): readonly Side[] {
  const { data } = finding;
  const of = (given: string | readonly string[] | undefined) =>
    SIDES.filter((side) => [given ?? []].flat().includes(side));
  return [
    ...of(data?.flush),
    ...of(data?.sides),
    ...(data?.flush ? [] : of(data?.reference).map(opposite)),
    ...of(data?.end).map(opposite),
  ];
}
