import type { FittedJoint, Half } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { thicknessAxis } from '../spec/sides.js';
import type { AsMade } from './as-made.js';
import { addAcross } from './bench-errors.js';
import { type Contributor, contributor } from './contributor.js';
import type { Curve } from './curve.js';
import { type Stack, Sum } from './stack.js';

/**
 * What may be off at a mitre, mm. `opening`: at the heel where more than nothing, at the toe where less, when the parts
 * stand square to each other. `toes`: how far the toes miss each other, along the mitre face. `heels`: how much longer
 * the entering part's mitre face is than its host's, with toes that meet.
 */
export interface MitreErrors {
  readonly opening: Curve;
  readonly toes: Curve;
  readonly heels: Curve;
}

const RADIAN = Math.PI / 180;
/** Half the turn of a corner of 90°. */
const HALF_TURN = 45;

/** One end of a mitre: its sheets, how far off its bevel is, and how far off its slots. */
interface Bevelled {
  /** Planned thickness, mm, and how far off it is. */
  readonly thickness: number;
  readonly sheet: Stack;
  readonly bevel: Contributor | undefined;
}

/**
 * A mitre's errors by its geometry. With bevels b₁ and b₂ off in the sense that takes wood from the heel, and faces
 * m = t / cos(β + b) long, parts held at their planned corner touch at the toe and stand m·sin(b₁ + b₂) apart at the
 * heel, or the other way round.
 */
export function mitreErrors(made: AsMade, joint: FittedJoint): MitreErrors | undefined {
  const [entering, host] = joint.halves;
  const [a, b] = [bevelled(made, joint, joint.entering), bevelled(made, joint, joint.host)];
  if (joint.meeting !== 'mitre' || joint.turn !== undefined || !a || !b) return undefined;
  const angle = joint.mitre?.angle ?? HALF_TURN;
  const face = (thickness: number, offAngle: number) => thickness / Math.cos((angle + offAngle) * RADIAN);
  const sheets = [...contributorsOf(a.sheet), ...contributorsOf(b.sheet)];
  const bevels = [a.bevel, b.bevel].filter((one) => one !== undefined);
  const read = reader([...new Set([...sheets, ...bevels])]);
  const thick = (end: Bevelled, off: readonly number[]) => end.thickness + read.sum(end.sheet, off);
  const tilt = (end: Bevelled, off: readonly number[]) => read.one(end.bevel, off);
  return {
    opening: {
      of: read.of,
      at: (off) => {
        const longest = Math.max(face(thick(a, off), tilt(a, off)), face(thick(b, off), tilt(b, off)));
        return longest * Math.sin((tilt(a, off) + tilt(b, off)) * RADIAN);
      },
    },
    heels: { of: read.of, at: (off) => face(thick(a, off), tilt(a, off)) - face(thick(b, off), tilt(b, off)) },
    toes: toesOf(made, joint, entering, host, a, b, (thickness) => face(thickness, 0)),
  };
}

/** Slots that are measured from the toe bring the toes together; measured from the heel, the sheets come in. */
function toesOf(
  made: AsMade,
  joint: FittedJoint,
  entering: Half | undefined,
  host: Half | undefined,
  a: Bevelled,
  b: Bevelled,
  face: (thickness: number) => number,
): Curve {
  if (!entering || !host) return { of: [], at: () => 0 };
  const sum = new Sum();
  addAcross({ sum, factor: Rational.ONE }, made, joint, entering, false);
  addAcross({ sum, factor: Rational.of(-1) }, made, joint, host, false);
  const slots = sum.done();
  const heel = entering.from.kind === 'heel';
  const sheets = heel ? [...contributorsOf(a.sheet), ...contributorsOf(b.sheet)] : [];
  const read = reader([...new Set([...contributorsOf(slots), ...sheets])]);
  return {
    of: read.of,
    at: (off) => {
      const miss = read.sum(slots, off);
      if (!heel) return miss;
      const faces = face(a.thickness + read.sum(a.sheet, off)) - face(b.thickness + read.sum(b.sheet, off));
      return faces - miss;
    },
  };
}

function bevelled(made: AsMade, joint: FittedJoint, id: string): Bevelled | undefined {
  const part = made.part(id);
  const axis = part && thicknessAxis(part.attitude);
  const thickness = axis && part.extent[axis];
  if (!axis || !thickness) return undefined;
  const { mitre } = made.tolerances;
  const tolerance = mitre && { plus: mitre.degrees, minus: mitre.degrees };
  return {
    thickness: thickness.toNumber(),
    sheet: made.size(id, axis),
    bevel: contributor('mitre', tolerance, {
      id: () => `bevel ${joint.id} ${id}`,
      words: () => say`bevel of ${id} (${joint.id}), degrees`,
      source: mitre?.source,
    }),
  };
}

const contributorsOf = (stack: Stack): readonly Contributor[] => stack.terms.map(({ of }) => of);

/** Reads stacks and contributors off a list of how far each of `of` is off. */
export function reader(of: readonly Contributor[]) {
  const place = new Map(of.map((one, i) => [one.id, i]));
  const one = (contributor: Contributor | undefined, off: readonly number[]): number =>
    (contributor && off[place.get(contributor.id) ?? -1]) ?? 0;
  const sum = (stack: Stack, off: readonly number[]): number =>
    stack.terms.reduce(
      (total, term) => total + term.coefficient.toNumber() * one(term.of, off),
      stack.shift.toNumber(),
    );
  return { of, one, sum };
}
