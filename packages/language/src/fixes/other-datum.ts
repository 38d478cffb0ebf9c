import { axisOf, isHigh, opposite, Rational, SIDES, type Side, say } from '@dryfit/engine';
import { isConnectFact, isDatumFact, type Joint } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { jointOf, setFact, setFacts, titled } from './support/facts.js';
import { because } from './support/follow.js';
import { connectOf, fittedOf, linesFact } from './support/lines.js';

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
    'edges-not-flush',
  ],
  mayFollow: {
    ...because('lines may miss the parts when they are measured from the other side', 'joint-can-rotate'),
    ...because(
      'lines lie elsewhere and the setback is another, which has cures of its own',
      'fence-out-of-reach',
      'spacer-not-in-stock',
    ),
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
      yield* sameSlots(about, joint, side);
    }
  },
};

/** The same slots, with lines of the joint's own that are their distances from the other side. */
function* sameSlots(about: Case, joint: Joint, side: Side): Iterable<Cure> {
  const [fitted, connect] = [fittedOf(about), connectOf(about)];
  const { datum, zero } = fitted ?? {};
  const statement = about.result?.spec.statements.find(({ id }) => id === fitted?.statement);
  if (!fitted || !connect || !datum || !zero || side !== opposite(datum) || statement?.kind !== 'joint') return;
  const joints = about.result?.fit.joints.filter((one) => one.statement === fitted.statement) ?? [];
  const parts = new Set(joints.flatMap(({ entering, host }) => [entering, host]));
  const axis = axisOf(side);
  const edges = (about.result?.fit.parts ?? [])
    .filter(({ id }) => parts.has(id))
    .flatMap(({ box }) => (box ? [isHigh(side) ? box.hi[axis] : box.lo[axis]] : []));
  const [first, ...rest] = edges;
  if (!first) return;
  const other = isHigh(side) ? Rational.max(first, ...rest) : Rational.min(first, ...rest);
  const whole = other.sub(zero).abs();
  const lines = fitted.lines.filter(({ use }) => use === 'used').map(({ fromZero }) => whole.sub(fromZero));
  if (lines.length === 0) return;
  const fact = linesFact(about, connect.connector, [...lines].reverse());
  yield {
    title: titled(say`Measure the same slots from the ${side}: datum ${side}, ${fact}`, about.unit),
    edits: setFacts(joint, [
      { line: `datum ${side}`, isSame: isDatumFact },
      { line: fact, isSame: isConnectFact },
    ]),
  };
}

function sides(about: Case): readonly Side[] {
  const { code, data } = about.finding;
  const given = [data?.sides ?? data?.datum ?? fittedOf(about)?.datum ?? []].flat();
  const known = SIDES.filter((side) => given.includes(side));
  const turn = code !== 'spacer-absurd' && code !== 'datum-off-the-run' && code !== 'datum-inside';
  return turn ? known.map(opposite) : known;
}
