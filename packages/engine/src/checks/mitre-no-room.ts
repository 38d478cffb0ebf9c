import type { Half } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { mitreFace, mitreSkin, mitreWall, mitreWindow, SQUARE_MITRE, tangent } from '../geometry/mitre.js';
import { fromToe } from '../joints/half.js';
import { addBounded, type Bounded, boundedOf, subBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { thicknessAxis } from '../spec/sides.js';
import type { Limits } from '../spec/stock.js';
import type { Check, CheckContext, Found } from './check.js';
import { type Milled, milledHalves, openingWord } from './support/halves.js';
import { roundedDown } from './support/round.js';
import { thinnest } from './support/sheet.js';

/**
 * A slot in a mitre face leaves too little under the outer face or at the heel; a warning where it fits only
 * while the machine is dead on.
 */
export const mitreNoRoom: Check = {
  code: 'mitre-no-room',
  severity: 'error',
  *run(context) {
    const told = new Set<string>();
    for (const milled of milledHalves(context)) {
      const { joint, half } = milled;
      // Both halves of a mitre are alike, and so are the two ends of a part: the statement is to be changed.
      if (half.role !== 'mitre' || half.slots.length === 0 || told.has(joint.statement)) continue;
      const found = inMitre(context, milled);
      if (!found) continue;
      told.add(joint.statement);
      yield found;
    }
  },
};

function inMitre(context: CheckContext, milled: Milled): Found | undefined {
  const { joint, half, part, connector, machine } = milled;
  const { limits } = context.spec.shop;
  const thickness = thinnest(context, part);
  if (!thickness || thickness.sign() <= 0) return undefined;
  const at = fromToe(half, thickness);
  const angle = angleOf(half);
  const window = mitreWindow(thickness, machine.kerf, half.depth, limits.skin, limits.wall, angle);
  const { plus = Rational.ZERO, minus = Rational.ZERO } = machine.base;
  const verdict = fits(at, window)
    ? fits(subBounded(at, boundedOf(minus)), window) && fits(addBounded(at, boundedOf(plus)), window)
      ? 'fits'
      : 'tight'
    : 'out';
  if (verdict === 'fits') return undefined;
  const room = window.to.value >= window.from.value;
  const full = part.extent[thicknessAxis(part.attitude)] ?? thickness;
  const word = openingWord(machine);
  const sheet = say`${part.material} at its thinnest, ${thickness}`;
  return {
    severity: verdict === 'tight' ? 'warning' : 'error',
    message:
      verdict === 'tight'
        ? say`a ${word} of ${connector.name} ${at} from the toe fits between ${window.from} and ${window.to} (${sheet}), but not once ${machine.name} is off by its tolerance`
        : say`a ${word} of ${connector.name} ${at} from the toe ${outcome(milled, thickness, at, limits)} (${sheet}); ${room ? say`there is room from ${window.from} to ${window.to}` : say`no place on this mitre leaves ${limits.skin} under the outer face and ${limits.wall} at the heel`}`,
    cure: room ? placeCure(window, half, full) : depthCure(thickness, machine.kerf, limits, angle),
    source: joint.source,
    related: [
      { message: say`${part.id} is of ${part.material}`, source: part.source },
      { message: say`${connector.name} is described here`, source: connector.source },
    ],
    about: { parts: [joint.entering, joint.host], joint: joint.id, statement: joint.statement },
    ...(room
      ? { data: { at: placeIn(window, half, full).toString() } }
      : depthData(thickness, machine.kerf, limits, angle)),
  };
}

interface Window {
  readonly from: Bounded;
  readonly to: Bounded;
}

/** At the limit itself a slot passes: no bound is finer than what a machine can be set to. */
const fits = (at: Bounded, { from, to }: Window): boolean =>
  at.value >= from.value - at.error - from.error && at.value <= to.value + at.error + to.error;

function outcome({ half, machine }: Milled, thickness: Rational, at: Bounded, limits: Limits): Text {
  const nearest = Rational.of(Math.round(at.value * 1e6), 1_000_000);
  const skin = mitreSkin(nearest, machine.kerf, half.depth, angleOf(half));
  const wall = mitreWall(thickness, nearest, machine.kerf, angleOf(half));
  if (skin.value < 0) return say`breaks out of the outer face by ${{ value: -skin.value, error: skin.error }}`;
  if (wall.value < 0) return say`breaks out of the heel by ${{ value: -wall.value, error: wall.error }}`;
  return say`leaves ${skin} under the outer face (least ${limits.skin}) and ${wall} to the heel (least ${limits.wall})`;
}

/** The middle of the window as the joint would write it: from the toe, or from the heel of the sheet as it is reckoned. */
function placeCure(window: Window, half: Half, thickness: Rational): Text {
  const place = placeIn(window, half, thickness);
  return say`Mill it in the middle of the room there is, ${place} from the ${half.from.kind}: at ${place} from reference.`;
}

function placeIn({ from, to }: Window, half: Half, thickness: Rational): Rational {
  const middle = (from.value + to.value) / 2;
  const distance = half.from.kind === 'heel' ? mitreFace(thickness, angleOf(half)).value - middle : middle;
  // A narrow window is not to be missed by rounding.
  const fine = to.value - from.value < 1 ? 100 : 10;
  return Rational.of(Math.round(distance * fine), fine);
}

/** With skin and wall given, the deepest plunge that any place allows is (m − k − wall − skin/cos β)/tan β for a face m. */
function depthCure(thickness: Rational, kerf: Rational, limits: Limits, angle: number): Text {
  const most = deepest(thickness, kerf, limits, angle);
  if (!most) return say`Use thicker material or a butt joint: no slot of this width fits on this mitre.`;
  return say`Take a connector that plunges no deeper than ${most}, or thicker material.`;
}

function deepest(thickness: Rational, kerf: Rational, limits: Limits, angle: number): Rational | undefined {
  const face = mitreFace(thickness, angle);
  const skin = mitreFace(limits.skin, angle).value;
  const most = (face.value - kerf.toNumber() - limits.wall.toNumber() - skin) / tangent(angle).value;
  return most <= 0 ? undefined : roundedDown({ value: most, error: face.error + Math.abs(most) * 1e-12 });
}

function depthData(thickness: Rational, kerf: Rational, limits: Limits, angle: number): Pick<Found, 'data'> {
  const most = deepest(thickness, kerf, limits, angle);
  return most ? { data: { most: most.toString() } } : {};
}

const angleOf = (half: Half): number => half.mitre?.angle ?? SQUARE_MITRE;
