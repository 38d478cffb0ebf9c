import { inRange, nearestStep } from '../checks/support/stops.js';
import type { FittedJoint, Half } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Toleranced } from '../spec/input.js';
import type { AsMade } from './as-made.js';
import type { Contributor, Origin } from './contributor.js';
import type { Sum } from './stack.js';

/** Where a half's errors are added, and how often: once, or once against. */
interface Into {
  readonly sum: Sum;
  readonly factor: Rational;
}

/**
 * How much further from its reference a half's slots lie than the table says, across the joint: the machine's base,
 * the stop a face is set by (or a line read by eye), dirt, and a cup that is not held flat. `stated`: the text writes a
 * tolerance for the place, which stands for what setting it brings.
 */
export function addAcross(into: Into, made: AsMade, joint: FittedJoint, half: Half, stated: boolean): void {
  addBase(into, made, joint, half);
  if (!half.stop) addLift(into, made, joint, half);
  else if (!stated) addStop(into, made, joint, half, half.stop.at);
}

/** A base that is fixed is off the same way in both halves; one that is set is set anew for each. */
function addBase({ sum, factor }: Into, made: AsMade, { id, machine }: FittedJoint, half: Half): void {
  if (!machine) return;
  const { least, most, plus, minus } = machine.base;
  const fixed = least.equals(most);
  const words = () =>
    fixed ? say`base of ${machine.name}` : say`base of ${machine.name} as set for ${half.part} (${id})`;
  const tolerance = plus && minus ? { plus, minus } : undefined;
  const name = fixed ? `machine ${machine.name}` : `machine ${machine.name} ${id} ${half.part}`;
  sum.add(made.contributors.of(name, 'machine', tolerance, words, machine.source), factor);
}

function addStop(into: Into, made: AsMade, joint: FittedJoint, half: Half, at: Rational): void {
  const { jig } = made.spec.shop;
  if (!jig?.stop || !inRange(jig, at)) {
    addLine(into, made, joint, half, 'across');
    return;
  }
  const { sum, factor } = into;
  const { dirt, stop } = made.tolerances;
  const name = `${joint.id} ${half.part}`;
  const words = (what: string) => () => say`${what} for ${half.part} (${joint.id})`;
  if (!at.isZero()) sum.off(nearestStep(jig, at).sub(at).mul(factor));
  sum.add(made.contributors.of(`stop ${name}`, 'stop', stop?.tolerance, words('stop'), stop?.source), factor);
  sum.add(oneWay(made, `dirt stop ${name}`, 'dirt', dirt, words('dirt at the stop')), factor.neg());
}

/** An edge's reference face lies on the machine's base or the bed; whatever lifts it brings the slot nearer to it. */
function addLift({ sum, factor }: Into, made: AsMade, joint: FittedJoint, half: Half): void {
  const { cup, dirt } = made.tolerances;
  const under = () => say`dirt under ${half.part} (${joint.id})`;
  sum.add(oneWay(made, `dirt under ${joint.id} ${half.part}`, 'dirt', dirt, under), factor.neg());
  if (made.spec.shop.jig?.hold !== undefined) return;
  sum.add(
    oneWay(made, `cup ${half.part}`, 'cup', cup, () => say`cup of ${half.part}, not held flat`),
    factor.neg(),
  );
}

/** How much further from their datum edge a half's slots lie than the table says, along the run. */
export function addAlong(into: Into, made: AsMade, joint: FittedJoint, half: Half): void {
  const { jig } = made.spec.shop;
  addLine(into, made, joint, half, 'along');
  if (!jig || jig.fences.length === 0) return;
  const { sum, factor } = into;
  const { dirt, fence } = made.tolerances;
  const words = () => say`${half.hand} fence`;
  sum.add(made.contributors.of(`fence ${half.hand}`, 'fence', fence?.tolerance, words, fence?.source), factor);
  const dirty = () => say`dirt at the fence, ${half.part} (${joint.id})`;
  sum.add(oneWay(made, `dirt fence ${joint.id} ${half.part}`, 'dirt', dirt, dirty), factor.neg());
  addSpacer(into, made, joint, half);
}

/** A spacer that is too wide keeps the part away from the fence, and brings its slots nearer to its datum edge. */
function addSpacer({ sum, factor }: Into, made: AsMade, joint: FittedJoint, half: Half): void {
  const { spacer: wanted } = half;
  const { spacer } = made.tolerances;
  const add = (id: string, words: () => Text) =>
    sum.add(made.contributors.of(id, 'spacer', spacer?.tolerance, words, spacer?.source), factor.neg());
  if (wanted.kind === 'cut' || wanted.kind === 'missing')
    add(`block ${joint.id} ${half.part}`, () => say`block of ${wanted.width} for ${half.part} (${joint.id})`);
  if (wanted.kind !== 'stock') return;
  sum.off(wanted.off.mul(factor).neg());
  wanted.stack.forEach((piece, i) => {
    const nth = wanted.stack.slice(0, i).filter((other) => other.equals(piece)).length + 1;
    add(`spacer ${piece} ${nth}`, () =>
      nth === 1 ? say`spacer ${piece}` : say`spacer ${piece} (no. ${String(nth)} of that width)`,
    );
  });
}

/** A line that is read by eye: once for a half, since its slots are laid off from one another. */
function addLine({ sum, factor }: Into, made: AsMade, joint: FittedJoint, half: Half, way: 'along' | 'across'): void {
  const { line } = made.tolerances;
  const words = () => say`line read by eye ${way === 'along' ? 'along' : 'across'} ${half.part} (${joint.id})`;
  const id = `line ${way} ${joint.id} ${half.part}`;
  sum.add(made.contributors.of(id, 'line', line?.tolerance, words, line?.source), factor);
}

function oneWay(
  made: AsMade,
  id: string,
  origin: Origin,
  figure: { readonly most: Rational; readonly source: Toleranced['source'] } | undefined,
  words: () => Text,
): Contributor | undefined {
  return figure && made.contributors.of(id, origin, { plus: figure.most, minus: Rational.ZERO }, words, figure.source);
}
