import { say, type Text } from '../fit/text.js';
import { nearestStep } from '../joints/stops.js';
import { partAsThick, type Uneven } from '../joints/uneven-ends.js';
import type { Check, CheckContext } from './check.js';
import { partNames } from './support/names.js';
import { unevenEnds } from './support/stops.js';

/** The two ends of one part need different stops on the parts it stands between. */
export const endsDiffer: Check = {
  code: 'ends-differ',
  severity: 'warning',
  *run(context) {
    const { jig } = context.spec.shop;
    if (!jig) return;
    const groups = new Map<string, Uneven[]>();
    for (const uneven of unevenEnds(context)) {
      const key = `${uneven.more.joint.statement}\n${uneven.more.half.part}\n${uneven.less.half.part}\n${uneven.by}`;
      groups.set(key, [...(groups.get(key) ?? []), uneven]);
    }
    for (const [first, ...others] of groups.values()) {
      if (!first) continue;
      const { more, less, by } = first;
      const like = others.map(({ more: { joint } }) => joint.entering);
      const near = nearestStep(jig, less.at);
      yield {
        message: say`the two ends of ${more.joint.entering} need different stops: ${more.at} from the ${more.end} of ${more.half.part}, ${less.at} from the ${less.end} of ${less.half.part}, and one stop for both sets it ${by} out of level${
          like.length > 0 ? say`; so it is for ${partNames(context, like)}` : []
        }${near.equals(less.at) ? [] : say`; the stop has no place at ${less.at}, the nearest is ${near}`}`,
        cure: say`Put ${block(context, first)} between the stop and the ${less.end} of ${less.half.part}, and say so here: allow ends-differ "…".`,
        source: more.joint.source,
        related: [],
        about: {
          parts: [more.joint.entering, ...like],
          joint: less.joint.id,
          statement: more.joint.statement,
        },
        data: { stops: [more.at.toString(), less.at.toString()], block: by.toString(), end: more.end },
      };
    }
  },
};

/** A block of the difference: an offcut, where a part is as thick as that. */
function block({ fit }: CheckContext, uneven: Uneven): Text {
  const part = partAsThick(fit, uneven);
  return part ? say`an offcut of ${part.material}, ${uneven.by} thick like ${part.id},` : say`a block of ${uneven.by}`;
}
