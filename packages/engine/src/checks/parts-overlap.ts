import type { Box, FittedJoint, FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { common, cut as cutBox, extentOf, withoutAll } from '../geometry/boxes.js';
import { isRecess } from '../geometry/cut-solid.js';
import { AXES, type Axis, axisOf } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { byId } from './support/alike.js';
import { MOVES } from './support/names.js';
import { pressed } from './support/openings.js';

/** Two parts take up the same room. */
export const partsOverlap: Check = {
  code: 'parts-overlap',
  severity: 'error',
  *run(context) {
    const placed = context.fit.parts.filter(isRightWayRound).sort((a, b) => byId(a.id, b.id));
    for (const [i, one] of placed.entries()) {
      for (const two of placed.slice(i + 1)) {
        const shared = overlap(context, one, two);
        if (!shared || pressed(context, one.id, two.id)) continue;
        const joint = jointOf(context, one, two);
        const least = AXES.reduce((a, b) => (extentOf(shared, b).lt(extentOf(shared, a)) ? b : a));
        yield {
          message: say`${one.id} and ${two.id} take up the same room: they overlap by ${extentOf(shared, 'x')} in width, ${extentOf(shared, 'y')} in depth and ${extentOf(shared, 'z')} in height`,
          cure: say`Move one of them ${extentOf(shared, least)} ${MOVES[least]}, shorten it, or let it in: with a notch, a groove or a housing.`,
          source: joint?.source ?? two.source,
          related: [one, two].map((part) => ({ message: say`${part.id} is declared here`, source: part.source })),
          about: { parts: [one.id, two.id], joint: joint?.id, statement: joint?.statement },
        };
      }
    }
  },
};

type Placed = FittedPart & { readonly box: Box };

/** A part whose size comes out the wrong way round has a finding of its own. */
const isRightWayRound = (part: FittedPart): part is Placed => {
  const { box } = part;
  return box !== undefined && AXES.every((axis) => box.lo[axis].lt(box.hi[axis]));
};

/** The largest piece of room that both take up, when no recess, notch or mitre makes way for it. */
function overlap(context: CheckContext, one: Placed, two: Placed): Box | undefined {
  const shared = common(one.box, two.box);
  if (!shared || mitred(context, one, two)) return undefined;
  const free = [...roomIn(context, one, two, shared), ...roomIn(context, two, one, shared)];
  const left = withoutAll(shared, free);
  return left.reduce<Box | undefined>((most, box) => (most && volume(most) >= volume(box) ? most : box), undefined);
}

const volume = (box: Box): number => AXES.reduce((product, axis) => product * extentOf(box, axis).toNumber(), 1);

const mitred = ({ fit }: CheckContext, one: FittedPart, two: FittedPart): boolean =>
  fit.joints.some((joint) => joint.verb === 'mitre' && between(joint, one, two));

const between = ({ entering, host }: FittedJoint, one: FittedPart, two: FittedPart): boolean =>
  (entering === one.id && host === two.id) || (entering === two.id && host === one.id);

const jointOf = ({ fit }: CheckContext, one: FittedPart, two: FittedPart): FittedJoint | undefined =>
  fit.joints.find((joint) => between(joint, one, two));

/**
 * Room that is cut out of `part`. A recess made for the other part is taken as wide as that part: whether it is
 * wide enough is told elsewhere.
 */
function* roomIn(context: CheckContext, part: Placed, other: Placed, shared: Box): Generator<Box> {
  for (const cut of part.cuts) {
    if (!isRecess(cut)) continue;
    const joint = cut.joint === undefined ? undefined : context.statement(cut.joint);
    const made = joint?.kind === 'joint' && joint.entering.includes(other.id);
    const across = AXES.find((axis) => axis !== cut.run && axis !== axisOf(cut.surface)) as Axis;
    yield made ? cutBox(cut.box, across, shared.lo[across], shared.hi[across]) : cut.box;
  }
}
