import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Check } from './check.js';
import { alike, byId } from './support/alike.js';

/** Both halves together are less deep than the connector is long across the joint, so it cannot close. */
export const jointBottomsOut: Check = {
  code: 'joint-bottoms-out',
  severity: 'error',
  *run(context) {
    const short = context.fit.joints
      .filter((joint) => depthShort(joint)?.sign() === 1)
      .sort((a, b) => byId(a.id, b.id));
    // The connector's figures are to blame, wherever it is used: once for each and each sum of depths.
    for (const [joint] of alike(short, (j) => [j.connector?.name, depths(j)])) {
      const { connector } = joint;
      const missing = depthShort(joint);
      const [first, second] = joint.halves;
      if (!connector || !missing || !first || !second) continue;
      const clearance = connector.clearance ?? Rational.ZERO;
      const glue = clearance.sign() > 0 ? say` and ${clearance} of room for glue` : say``;
      yield {
        message: say`${connector.name} is ${connector.across} across the joint${glue}, but the two halves are only ${first.depth} and ${second.depth} deep: the joint stays ${missing} open`,
        cure: say`Plunge ${missing} deeper in all, as in ${first.depth.add(missing.div(Rational.TWO))} and ${second.depth.add(missing.div(Rational.TWO))}, or take a connector at most ${depths(joint).sub(clearance)} across.`,
        source: joint.source,
        related: [{ message: say`${connector.name} is described here`, source: connector.source }],
        about: { parts: [joint.entering, joint.host], joint: joint.id, statement: joint.statement },
        data: { short: missing.toString() },
      };
    }
  },
};

const depths = (joint: FittedJoint): Rational => Rational.sum(joint.halves.map((half) => half.depth));

/** What the depths lack of the connector and its glue, mm; undefined where nothing is milled. */
function depthShort(joint: FittedJoint): Rational | undefined {
  const { connector, halves } = joint;
  if (!connector || halves.length !== 2) return undefined;
  return connector.across.add(connector.clearance ?? Rational.ZERO).sub(depths(joint));
}
