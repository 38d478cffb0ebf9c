import { opposite, SIDES, type Side, say } from '@dryfit/engine';
import { isDatumFact } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { jointOf, setFact, titled } from './support/facts.js';
import { fittedOf } from './support/lines.js';

/** Measures a joint's lines from another side. */
export const otherDatum: Fix = {
  name: 'other-datum',
  codes: [
    'spacer-absurd',
    'shelf-needs-spacer',
    'spacer-not-in-stock',
    'fence-out-of-reach',
    'datum-off-the-run',
    'datum-inside',
  ],
  mayFollow: {
    'joint-can-rotate': 'lines may miss the parts when they are measured from the other side',
  },
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    for (const side of sides(about)) {
      yield {
        title: titled(say`Measure from the ${side}: datum ${side}`, about.unit),
        edits: [setFact(joint, `datum ${side}`, isDatumFact)],
        preferred: about.finding.code === 'spacer-absurd',
      };
    }
  },
};

function sides(about: Case): readonly Side[] {
  const { code, data } = about.finding;
  const given = [data?.sides ?? data?.datum ?? fittedOf(about)?.datum ?? []].flat();
  const known = SIDES.filter((side) => given.includes(side));
  const turn = code !== 'spacer-absurd' && code !== 'datum-off-the-run' && code !== 'datum-inside';
  return turn ? known.map(opposite) : known;
}
