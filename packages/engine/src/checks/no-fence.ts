import type { FitResult } from '../fit/fit.js';
import { list, say, type Text } from '../fit/text.js';
import { jointErrors } from '../tolerance/joint-errors.js';
import { type Operation, operationsOf } from '../work/operation.js';
import { hasFence, waysOf } from '../work/ways.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { asMade } from './support/as-made.js';

/** A datum edge goes to a fence that the jig has not got, however the piece may be held and measured in this shop. */
export const noFence: Check = {
  code: 'no-fence',
  severity: 'error',
  *run(context) {
    const { jig, pose } = context.spec.shop;
    if (jig?.fences.length !== 1) return;
    const [has] = jig.fences;
    const lacks = has === 'left' ? 'right' : 'left';
    for (const group of alike(lacking(context), ({ joint }) => [joint.statement])) {
      const [{ joint, half }] = group;
      const parts = once(group.flatMap(({ pieces }) => pieces.flatMap((one) => one.parts)));
      const where = group.map(({ part, half: own }): string => `${own.surface} of ${part.id}`);
      const role = half.role === 'face' ? 'face' : 'edge';
      const usual = pose[role];
      yield {
        message: say`with the ${half.datum} for its datum, the ${list([...new Set(where)], ' and ')} goes to the ${lacks} fence, and ${jig.name} has a ${has ?? ''} one only`,
        cure: cure(role, usual, lacks),
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, statement: joint.statement },
      };
    }
  },
};

const cure = (role: 'edge' | 'face', usual: 'up' | 'down', lacks: string): Text =>
  say`If pieces can be held the other way up as well, write so: pose { ${role} slots reference ${usual} or ${usual === 'up' ? 'down' : 'up'} }; or give the jig a ${lacks} fence.`;

/** Operations that no way of milling brings to a fence that there is. */
function lacking(context: CheckContext): readonly Operation[] {
  const { spec, fit } = context;
  const errors: FitResult['errors'] = (id) => {
    const joint = context.joint(id);
    return joint ? jointErrors(asMade(context), joint) : [];
  };
  const none = () => [];
  const result: FitResult = { spec, fit, findings: [], silenced: [], reasons: none, place: none, errors };
  const items = [{ result, count: 1 }];
  const operations = operationsOf(items);
  const ways = waysOf(operations, spec.shop, items);
  return operations.filter(({ number }) => ways[number]?.every(({ half }) => !hasFence(half, spec.shop.jig)));
}
