import { type GlueStep, glueUp, mostJoints } from '../assembly/index.js';
import { isGlued } from '../consumables/glued.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Check, CheckContext } from './check.js';
import { comingApart } from './support/coming-apart.js';
import { partNames } from './support/names.js';

/** A step of the glue-up closes more glued joints than can be closed before the glue sets. */
export const glueSetsFirst: Check = {
  code: 'glue-sets-first',
  severity: 'warning',
  *run(context) {
    const { glueOpen, jointTime } = context.spec.shop.limits;
    if (!glueOpen || !jointTime) return;
    const most = mostJoints(context.spec.shop.limits);
    for (const step of glueUp(context.fit, most, comingApart(context)).steps) {
      const joints = step.joints.flatMap((id) => context.joint(id) ?? []).filter(isGlued);
      const [first] = joints;
      const takes = jointTime.mul(Rational.of(joints.length));
      if (!first || takes.le(glueOpen)) continue;
      yield {
        message: say`${putting(context, step)} closes ${joints.length} glued joints at once, which at ${minutes(jointTime)} each takes ${minutes(takes)}; the glue stays open for ${minutes(glueOpen)}`,
        cure: say`Leave out of the glue what can do without: a panel dry in its groove, a joint with screws; or take a glue that stays open for ${minutes(takes)}, or more hands.`,
        source: first.source,
        related: [],
        about: { parts: step.coming.flatMap(({ parts }) => parts), joint: first.id, statement: first.statement },
      };
    }
  },
};

/** "putting rh to lh and shelf (all 4)". */
function putting(context: CheckContext, { coming, onto }: GlueStep): Text {
  const parts = partNames(
    context,
    coming.flatMap(({ parts: list }) => list),
  );
  return onto.length === 0 ? say`putting ${parts} together` : say`putting ${parts} to ${partNames(context, onto)}`;
}

/** Minutes are no lengths: they are printed as they are, to a hundredth. */
const minutes = (time: Rational): string => `${Number(time.toNumber().toFixed(2))} min`;
