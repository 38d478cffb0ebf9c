import type { FittedJoint, Half } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { thicknessAxis } from '../spec/sides.js';
import type { AsMade } from './as-made.js';
import { addAcross } from './bench-errors.js';
import { type Contributor, contributor } from './contributor.js';
import type { Curve } from './curve.js';
import { contributorsOf, reader } from './reader.js';
import { type Stack, Sum } from './stack.js';
import { turnedBy } from './turned-as-made.js';

/**
 * What may be off at a mitre, mm. `opening`: at the heel where more than nothing, at the toe where less, when the parts
 * stand square to each other, or a turned one along its cant. `toes`: how far the toes miss each other, along the mitre face. `heels`: how much longer
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
 * heel, or the other way round. A turned part stands along its cant as that is cut: the corner at one end of it comes
 * wider by as much as the cant turns, and at the other narrower.
 */
export function mitreErrors(made: AsMade, joint: FittedJoint): MitreErrors | undefined {
  const [entering, host] = joint.halves;
  const [a, b] = [bevelled(made, joint, joint.entering), bevelled(made, joint, joint.host)];
  if (joint.meeting !== 'mitre' || !a || !b) return undefined;
  const angle = joint.mitre?.angle ?? HALF_TURN;
  const face = (thickness: number, offAngle: number) => thickness / Math.cos((angle + offAngle) * RADIAN);
  const sheets = [...contributorsOf(a.sheet), ...contributorsOf(b.sheet)];
  const bevels = [a.bevel, b.bevel].filter((one) => one !== undefined);
  const read = reader([...new Set([...sheets, ...bevels])]);
  const thick = (end: Bevelled, off: readonly number[]) => end.thickness + read.sum(end.sheet, off);
  const tilt = (end: Bevelled, off: readonly number[]) => read.one(end.bevel, off);
  const stands = standing(made, joint, read.of);
  return {
    opening: {
      of: stands.of,
      at: (off) => {
        const longest = Math.max(face(thick(a, off), tilt(a, off)), face(thick(b, off), tilt(b, off)));
        return longest * Math.sin((tilt(a, off) + tilt(b, off)) * RADIAN + stands.wider(off));
      },
    },
    heels: { of: read.of, at: (off) => face(thick(a, off), tilt(a, off)) - face(thick(b, off), tilt(b, off)) },
    toes: toesOf(made, joint, entering, host, a, b, (thickness) => face(thickness, 0)),
  };
}

/** By how much the corner at an end of a turned part comes wider than planned, radians; `of` begins with what is given. */
function standing(made: AsMade, joint: FittedJoint, of: readonly Contributor[]) {
  const along = joint.turn && made.turned.standsAlong(joint.entering);
  if (!along) return { of, wider: () => 0 };
  const [x, y] = along.off;
  const read = reader([...new Set([...of, ...contributorsOf(x), ...contributorsOf(y)])]);
  const sense = made.turned.widens(joint);
  return {
    of: read.of,
    wider: (off: readonly number[]) => sense * turnedBy(along, read.sum(x, off), read.sum(y, off)),
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
