import type { FittedJoint, Half, StopBlock } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { inRange, nearestStep, stopPlace } from '../joints/stops.js';
import { Rational } from '../number/rational.js';
import type { Tolerance } from '../spec/input.js';
import type { AsMade } from './as-made.js';
import { contributor } from './contributor.js';
import type { Sum } from './stack.js';

/** What is asked of a cabinet for the errors of its halves. */
export type AtBench = Pick<AsMade, 'shared' | 'tolerances'> & { readonly spec: Pick<AsMade['spec'], 'shop'> };

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
export function addAcross(into: Into, made: AtBench, joint: FittedJoint, half: Half, stated: boolean): void {
  addBase(into, made, joint, half);
  if (!half.stop) addLift(into, made, joint, half);
  else if (!stated) {
    addStop(into, made, joint, half, stopPlace(half.stop));
    if (half.stop.block) addBlock(into, made, joint, half, half.stop.block);
  }
}

/** Along a cant no edge stands square to be held at a fence: lines are marked out from the end of it. */
const isMarkedOut = ({ turn }: Half): boolean => turn !== undefined;

/** A base that is fixed is off the same way in both halves; one that is set is set anew for each. */
function addBase({ sum, factor }: Into, made: AtBench, { id, machine }: FittedJoint, half: Half): void {
  if (!machine) return;
  const { least, most, plus, minus } = machine.base;
  const fixed = least.equals(most);
  const words = () =>
    fixed ? say`base of ${machine.name}` : say`base of ${machine.name} as set for ${half.part} (${id})`;
  const tolerance = plus && minus ? { plus, minus } : undefined;
  const { source, name } = machine;
  if (fixed) sum.add(made.shared.of(`machine ${name}`, 'machine', tolerance, { words, source }), factor);
  else
    sum.add(
      contributor('machine', tolerance, { id: () => `machine ${name} ${id} ${half.part}`, words, source }),
      factor,
    );
}

function addStop(into: Into, made: AtBench, joint: FittedJoint, half: Half, at: Rational): void {
  const { jig } = made.spec.shop;
  if (!jig?.stop || !inRange(jig, at)) {
    addLine(into, made, joint, half, 'across');
    return;
  }
  const { sum, factor } = into;
  const { dirt, stop } = made.tolerances;
  const name = () => `${joint.id} ${half.part}`;
  if (!at.isZero()) sum.off(nearestStep(jig, at).sub(at).mul(factor));
  const set = {
    id: () => `stop ${name()}`,
    words: () => say`stop for ${half.part} (${joint.id})`,
    source: stop?.source,
  };
  sum.add(contributor('stop', stop?.tolerance, set), factor);
  const dirty = {
    id: () => `dirt stop ${name()}`,
    words: () => say`dirt at the stop for ${half.part} (${joint.id})`,
    source: dirt?.source,
  };
  sum.add(contributor('dirt', oneWay(dirt), dirty), factor.neg());
}

/** A block at the stop that is too thick brings the slots nearer to the end; an offcut is as thick as its sheet came out. */
function addBlock(
  { sum, factor }: Into,
  made: AtBench,
  { id }: FittedJoint,
  half: Half,
  { width, like }: StopBlock,
): void {
  const { materials, tolerances } = made.spec.shop;
  const sheet = like && materials.get(like.material)?.measured;
  const naming = {
    id: () => `block at the stop ${id} ${half.part}`,
    words: () => say`block of ${width} at the stop for ${half.part} (${id})`,
    source: sheet?.source ?? tolerances?.spacer?.source,
  };
  sum.add(contributor('spacer', like ? sheet?.tolerance : tolerances?.spacer?.tolerance, naming), factor.neg());
}

/**
 * An edge's reference face lies on the machine's base or the bed, and for slots in a face the base lies on the cant;
 * whatever lifts it brings the slot nearer. A cup bends a face, and not where an edge of it runs.
 */
function addLift({ sum, factor }: Into, made: AtBench, joint: FittedJoint, half: Half): void {
  const { cup, dirt } = made.tolerances;
  const onCant = half.role === 'face';
  const under = {
    id: () => `dirt under ${joint.id} ${half.part}`,
    words: () =>
      onCant ? say`dirt on the cant of ${half.part} (${joint.id})` : say`dirt under ${half.part} (${joint.id})`,
    source: dirt?.source,
  };
  sum.add(contributor('dirt', oneWay(dirt), under), factor.neg());
  if (onCant || cup === undefined || made.spec.shop.jig?.hold !== undefined) return;
  const bowed = { words: () => say`cup of ${half.part}, not held flat`, source: cup.source };
  sum.add(made.shared.of(`cup ${half.part}`, 'cup', oneWay(cup), bowed), factor.neg());
}

/** How much further from their datum edge a half's slots lie than the table says, along the run. */
export function addAlong(into: Into, made: AtBench, joint: FittedJoint, half: Half): void {
  const { jig } = made.spec.shop;
  addLine(into, made, joint, half, 'along');
  if (!jig || jig.fences.length === 0 || isMarkedOut(half)) return;
  const { sum, factor } = into;
  const { dirt, fence } = made.tolerances;
  const place = { words: () => say`${half.hand} fence`, source: fence?.source };
  sum.add(made.shared.of(`fence ${half.hand}`, 'fence', fence?.tolerance, place), factor);
  const dirty = {
    id: () => `dirt fence ${joint.id} ${half.part}`,
    words: () => say`dirt at the fence, ${half.part} (${joint.id})`,
    source: dirt?.source,
  };
  sum.add(contributor('dirt', oneWay(dirt), dirty), factor.neg());
  addSpacer(into, made, joint, half);
}

/** A spacer that is too wide keeps the part away from the fence, and brings its slots nearer to its datum edge. */
function addSpacer({ sum, factor }: Into, made: AtBench, joint: FittedJoint, half: Half): void {
  const { spacer: wanted } = half;
  const { spacer } = made.tolerances;
  if (wanted.kind === 'cut' || wanted.kind === 'missing') {
    const block = {
      id: () => `block ${joint.id} ${half.part}`,
      words: () => say`block of ${wanted.width} for ${half.part} (${joint.id})`,
      source: spacer?.source,
    };
    sum.add(contributor('spacer', spacer?.tolerance, block), factor.neg());
  }
  if (wanted.kind !== 'stock') return;
  sum.off(wanted.off.mul(factor).neg());
  wanted.stack.forEach((piece, i) => {
    const nth = wanted.stack.slice(0, i).filter((other) => other.equals(piece)).length + 1;
    const words = () => (nth === 1 ? say`spacer ${piece}` : say`spacer ${piece} (no. ${String(nth)} of that width)`);
    const naming = { words, source: spacer?.source };
    sum.add(made.shared.of(`spacer ${piece} ${nth}`, 'spacer', spacer?.tolerance, naming), factor.neg());
  });
}

/** A line that is read by eye: once for a half, since its slots are laid off from one another. */
function addLine({ sum, factor }: Into, made: AtBench, joint: FittedJoint, half: Half, way: 'along' | 'across'): void {
  const { line } = made.tolerances;
  const naming = {
    id: () => `line ${way} ${joint.id} ${half.part}`,
    words: () => say`line read by eye ${way} ${half.part} (${joint.id})`,
    source: line?.source,
  };
  sum.add(contributor('line', line?.tolerance, naming), factor);
}

const oneWay = (figure: { readonly most: Rational } | undefined): Tolerance | undefined =>
  figure && { plus: figure.most, minus: Rational.ZERO };
