import type { FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { highSide, lowSide, thicknessAxis } from '../spec/sides.js';
import type { JointStatement, Statement } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';
import { thickest } from './support/sheet.js';
import { shortfall } from './support/tolerance.js';

/** A groove or housing is narrower than the panel that goes in may be thick. */
export const backPinched: Check = {
  code: 'back-pinched',
  severity: 'error',
  *run(context) {
    const pinched = [...fits(context)].filter(({ least, thick }) => least.lt(thick));
    for (const group of alike(pinched, (f) => [f.joint.id, f.least, f.thick])) {
      const [{ joint, part, least, thick }] = group;
      const parts = once(group.map((f) => f.part.id));
      const word = joint.verb === 'house' ? 'housing' : 'groove';
      yield {
        message: say`the ${word} for ${partNames(context, parts)} is ${least} wide, but ${part.material} may be ${thick} thick: it does not go in, ${thick.sub(least)} too thick`,
        cure: say`Make the ${word} at least ${thick} wide: width ${thick}, or use a thinner sheet.`,
        source: joint.width?.source ?? joint.source,
        related: group.map((f) => ({ message: say`${f.part.id} is of ${f.part.material}`, source: f.part.source })),
        about: { parts, statement: joint.id },
        data: { width: thick.toString() },
      };
    }
  },
};

interface Fits {
  readonly joint: JointStatement;
  readonly part: FittedPart;
  /** Width of the groove at the narrow end of its own tolerance, mm. */
  readonly least: Rational;
  readonly thick: Rational;
}

function* fits(context: CheckContext): Generator<Fits> {
  for (const joint of context.spec.statements) {
    if (joint.kind !== 'joint') continue;
    for (const id of joint.entering) {
      const part = context.part(id);
      const thick = part && thickest(context, part);
      const least = part && widthOf(context, joint, part);
      if (part && thick && least) yield { joint, part, least, thick };
    }
  }
}

/** Width of a groove, whoever wrote it; of a housing only as written, since it is cut to the piece otherwise. */
function widthOf({ spec, solved }: CheckContext, joint: JointStatement, part: FittedPart): Rational | undefined {
  const written = joint.width?.value.sub(shortfall(spec, joint.width));
  if (joint.verb !== 'groove') return joint.verb === 'house' ? written : undefined;
  if (written) return written;
  // A groove without a width of its own shares the one that another statement about the panel gives it.
  if (grooves(spec.statements, part.id).some((other) => other.width)) return undefined;
  const axis = thicknessAxis(part.attitude);
  const lo = solved.groove(part.id, lowSide(axis));
  const hi = solved.groove(part.id, highSide(axis));
  return lo && hi ? Rational.max(hi.sub(lo), lo.sub(hi)) : undefined;
}

const grooves = (statements: readonly Statement[], part: string): readonly JointStatement[] =>
  statements.filter((s): s is JointStatement => s.kind === 'joint' && s.verb === 'groove' && s.entering.includes(part));
