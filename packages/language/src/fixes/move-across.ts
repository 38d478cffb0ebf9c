import { Rational, say } from '@dryfit/engine';
import { isAcrossFact } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { jointOf, setFact, titled } from './support/facts.js';
import { decent, lengthIn, writtenAs } from './support/figures.js';
import { fittedOf } from './support/lines.js';

/** Mills a joint's slots at another distance from the reference. */
export const moveAcross: Fix = {
  name: 'move-across',
  codes: ['thin-wall', 'references-differ', 'mitre-no-room', 'wrong-face-hides', 'slots-collide'],
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    for (const at of distances(about)) {
      if (at.sign() <= 0) continue;
      yield {
        title: titled(say`Mill at ${at} from the reference: at ${at} from reference`, about.unit),
        edits: [setFact(joint, `at ${writtenAs(at, about.unit)} from reference`, isAcrossFact)],
        preferred: about.finding.code === 'mitre-no-room',
      };
    }
  },
};

function distances(about: Case): readonly Rational[] {
  const { finding, unit } = about;
  const { data } = finding;
  const place = lengthIn(data?.at);
  if (place) return [place];
  const fitted = fittedOf(about);
  const half = fitted?.halves.find(({ role }) => role === 'edge');
  if (!half) return [];
  const short = lengthIn(data?.short);
  if (finding.code === 'thin-wall' && short) {
    const away = data?.side === half.from.side;
    const to = away ? half.across.add(short) : half.across.sub(short);
    return [decentTenth(to, away), decent(to, unit, away ? 'more' : 'less'), to];
  }
  const base = fitted?.machine?.base;
  if (finding.code === 'references-differ' && base) return [half.across.lt(base.least) ? base.least : base.most];
  if (finding.code === 'slots-collide') return [1, -1, 2, -2, 3, -3].map((by) => half.across.add(Rational.of(by)));
  return [];
}

/** A tenth of a millimetre is as finely as a base is set. */
function decentTenth(value: Rational, more: boolean): Rational {
  const tenths = value.mul(Rational.of(10));
  return (more ? tenths.ceil() : tenths.floor()).div(Rational.of(10));
}
