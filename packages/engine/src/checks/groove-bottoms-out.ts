import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';
import { shortfall } from './support/tolerance.js';

/** A panel touches the bottom of its groove, or may touch it within the tolerances written. */
export const grooveBottomsOut: Check = {
  code: 'groove-bottoms-out',
  severity: 'error',
  *run(context) {
    const tight = context.fit.joints.flatMap((joint) => clearanceOf(context, joint) ?? []);
    const groups = alike(
      tight.filter(({ clearance, stray }) => clearance.le(stray)),
      ({ joint, clearance, stray }) => [joint.statement, clearance, stray],
    );
    for (const group of groups) {
      const [{ joint, clearance, stray }] = group;
      const hosts = once(group.map((g) => g.joint.host));
      const panels = once(group.map((g) => g.joint.entering));
      const strays = stray.sign() > 0;
      const found = strays
        ? say`the clearance of ${clearance} at the bottom of the groove may be less by ${stray} with the tolerances written, so ${partNames(context, panels)} can touch bottom in ${partNames(context, hosts)}`
        : clearance.sign() === 0
          ? say`${partNames(context, panels)} reaches the bottom of its groove in ${partNames(context, hosts)}: without clearance the joints of the carcase stay open when the panel is a hair too large`
          : say`${partNames(context, panels)} would have to go ${clearance.neg()} into the bottom of its groove in ${partNames(context, hosts)}`;
      yield {
        message: found,
        cure: say`Give the groove a clearance of more than ${stray}, as in: clearance ${stray.add(Rational.of(1, 2))}.`,
        source: joint.source,
        related: [],
        about: { parts: [...panels, ...hosts], joint: joint.id, statement: joint.statement },
        data: { clearance: clearance.toString(), stray: stray.toString() },
      };
    }
  },
};

interface Tight {
  readonly joint: FittedJoint;
  readonly clearance: Rational;
  /** How much nearer to the bottom the panel may come by the tolerances of the lengths written, mm. */
  readonly stray: Rational;
}

/**
 * The panel's edge lies depth − clearance inside the host. A groove cut shallower than written and a clearance
 * that comes out smaller both bring the bottom nearer.
 */
function clearanceOf({ spec, statement }: CheckContext, joint: FittedJoint): Tight | undefined {
  const written = statement(joint.statement);
  if (joint.verb !== 'groove' || written?.kind !== 'joint' || !written.depth) return undefined;
  const { depth, clearance } = written;
  const stray = shortfall(spec, depth).add(clearance ? shortfall(spec, clearance) : Rational.ZERO);
  return { joint, clearance: clearance?.value ?? Rational.ZERO, stray };
}
