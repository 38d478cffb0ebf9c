import type { FittedJoint, Line } from '../fit/fit.js';
import { list, say, type Text } from '../fit/text.js';
import { inward } from '../joints/datum.js';
import { Rational } from '../number/rational.js';
import type { Check } from './check.js';
import { alike } from './support/alike.js';

/** None of a joint's lines lands on the parts that meet, so that nothing would hold them. */
export const noConnectorLands: Check = {
  code: 'no-connector-lands',
  severity: 'error',
  *run(context) {
    const bare = context.fit.joints.filter(
      (joint) =>
        joint.connector &&
        joint.contact &&
        joint.trouble.length === 0 &&
        !joint.lines.some((line) => line.use === 'used'),
    );
    for (const group of alike(bare, (joint) => [joint.statement, ...joint.lines.map((line) => line.use)])) {
      const [joint] = group;
      const stretch = stretchOf(joint);
      if (!stretch || !joint.connector) continue;
      const fates = (['outside contact', 'skipped', 'left out'] as const).flatMap((use): Text[] => {
        const lines = joint.lines.filter((line) => line.use === use);
        return lines.length === 0 ? [] : [say`${list(lines.map((line) => line.fromZero))} ${words(use, lines)}`];
      });
      const lines = fates.length === 0 ? say`there are no lines` : say`${list(fates, ', and ')}`;
      yield {
        message: say`no ${joint.connector.name} holds ${joint.entering} to ${joint.host}: they touch from ${stretch.from} to ${stretch.to} from the ${joint.datum ?? 'datum'}, and ${lines}`,
        cure: say`Put at least two lines between ${stretch.from} and ${stretch.to}, or say how the joint is held: connect none "screwed".`,
        source: joint.source,
        related: [],
        about: { parts: [joint.entering, joint.host], joint: joint.id, statement: joint.statement },
      };
    }
  },
};

function words(use: Line['use'], lines: readonly Line[]): string {
  const many = lines.length > 1;
  if (use === 'outside contact') return many ? 'lie outside it' : 'lies outside it';
  if (use === 'skipped') return many ? 'are skipped near its ends' : 'is skipped near its end';
  return many ? 'are left out' : 'is left out';
}

function stretchOf({ contact, datum, zero }: FittedJoint) {
  if (!contact || !datum || !zero) return undefined;
  const ends = [inward(datum, zero, contact.lo), inward(datum, zero, contact.hi)] as const;
  return { from: Rational.min(...ends), to: Rational.max(...ends) };
}
