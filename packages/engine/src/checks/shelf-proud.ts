import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { hostsOf } from '../sizes/hosts.js';
import { type Axis, highSide, isFace, lowSide, outward, type Side } from '../spec/sides.js';
import type { Fact, PartId } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';

/** An edge of a part stands out beyond the part it enters, and nothing says that it should. */
export const shelfProud: Check = {
  code: 'shelf-proud',
  severity: 'warning',
  *run(context) {
    const proud = context.fit.joints.flatMap((joint) => [...standingOut(context, joint)]);
    for (const group of alike(proud, (p) => [p.joint.statement, p.side, p.by])) {
      const [{ joint, side, by }] = group;
      const parts = once(group.map((p) => p.joint.entering));
      const hosts = once(group.map((p) => p.joint.host));
      const first = hosts[0] ?? joint.host;
      yield {
        message: say`the ${side} of ${partNames(context, parts)} stands ${by} proud of ${partNames(context, hosts)}; more than ${context.spec.shop.limits.step} is felt and seen`,
        cure: say`Bring it flush: flush ${side}, or say that it is meant: ${side} proud ${by} of ${first}.`,
        source: joint.source,
        related: [...parts, ...hosts].flatMap((id) => {
          const part = context.part(id);
          return part ? [{ message: say`${id} is declared here`, source: part.source }] : [];
        }),
        about: { parts: [...parts, ...hosts], joint: joint.id, statement: joint.statement },
        data: { side, by: by.toString() },
      };
    }
  },
};

interface Proud {
  readonly joint: FittedJoint;
  readonly side: Side;
  readonly by: Rational;
}

/** Only what enters with an edge can stand out: a face laid on may well be larger than what it covers. */
function* standingOut(context: CheckContext, joint: FittedJoint): Generator<Proud> {
  const part = context.part(joint.entering);
  const enters = joint.verb === 'butt' || joint.verb === 'house';
  // Where edges cross, one part runs on past the other.
  const crossing = joint.meeting === 'edge to edge' && part?.attitude !== context.part(joint.host)?.attitude;
  if (!enters || !joint.run || !part || crossing || isFace(joint.enteringSide, part.attitude)) return;
  // What comes out the wrong way round has a finding of its own.
  if ([joint.entering, joint.host].some((id) => isBackwards(context.solved.extent(id, joint.run as Axis)))) return;
  for (const side of [lowSide(joint.run), highSide(joint.run)]) {
    const own = context.solved.at(joint.entering, side);
    const host = context.solved.at(joint.host, side);
    if (!own || !host) continue;
    const by = own.sub(host).mul(Rational.of(outward(side)));
    if (by.gt(context.spec.shop.limits.step) && !meant(context, joint, side)) yield { joint, side, by };
  }
}

const isBackwards = (extent: Rational | undefined): boolean => extent !== undefined && extent.sign() <= 0;

/** Whether the spec says `proud`, or gives a distance from this very side of a host of the joint. */
function meant({ spec, statement: written }: CheckContext, joint: FittedJoint, side: Side): boolean {
  const own = written(joint.statement);
  const hosts = own?.kind === 'joint' ? hostsOf(own) : [];
  const says = (fact: Fact): boolean => {
    if (fact.kind === 'proud') return fact.side === side;
    return fact.kind === 'at' && fact.side === side && hosts.includes(fact.plane.part) && fact.plane.plane === side;
  };
  const about = (parts: readonly PartId[]): boolean => parts.includes(joint.entering);
  return spec.statements.some((statement) => {
    if (statement.kind === 'joint') return about(statement.entering) && statement.facts.some(says);
    return statement.kind === 'placing' && about(statement.parts) && says(statement.fact);
  });
}
