import { say } from '../fit/text.js';
import { thicknessAxis } from '../spec/sides.js';
import type { Check } from './check.js';
import { alike } from './support/alike.js';

/** Two parts of different thickness meet in a mitre, so that the two mitre faces differ in length. */
export const mitreUnequal: Check = {
  code: 'mitre-unequal',
  severity: 'error',
  *run(context) {
    const pairs = context.fit.joints
      .filter((joint) => joint.verb === 'mitre')
      .flatMap((joint) => {
        const entering = context.part(joint.entering);
        const host = context.part(joint.host);
        const one = entering?.extent[thicknessAxis(entering.attitude)];
        const two = host?.extent[thicknessAxis(host.attitude)];
        return entering && host && one && two && !one.equals(two) ? [{ joint, entering, host, one, two }] : [];
      });
    for (const [{ joint, entering, host, one, two }] of alike(pairs, (p) => [p.joint.statement, p.one, p.two])) {
      yield {
        message: say`${entering.id} is ${one} thick and ${host.id} ${two}: with a 45° mitre between them the inner corners miss each other by ${one.sub(two).abs()}`,
        cure: say`Make both of one material, or butt one against the other.`,
        source: joint.source,
        related: [entering, host].map((p) => ({ message: say`${p.id} is of ${p.material}`, source: p.source })),
        about: { parts: [entering.id, host.id], joint: joint.id, statement: joint.statement },
      };
    }
  },
};
