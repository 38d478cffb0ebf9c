import { inRange, nearestStep } from '../checks/support/stops.js';
import type { FittedJoint, Half } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Tolerance, Toleranced } from '../spec/input.js';
import type { AsMade } from './as-made.js';
import type { Origin } from './contributor.js';
import { NOTHING_OFF, off, reversed, type Stack, single, stacked } from './stack.js';

const HERE = Rational.ZERO;

/**
 * How much further from its reference a half's slots lie than the table says, across the joint: the machine's base,
 * the stop a face is set by (or a line read by eye), dirt, and a cup that is not held flat.
 */
export function acrossOff(made: AsMade, joint: FittedJoint, half: Half, stated: boolean): Stack {
  return stacked(
    base(made, joint, half),
    half.stop ? (stated ? NOTHING_OFF : stop(made, joint, half)) : lifted(made, joint, half),
  );
}

/** A base that is fixed is off the same way in both halves; one that is set is set anew for each. */
function base(made: AsMade, { id, machine }: FittedJoint, half: Half): Stack {
  if (!machine) return NOTHING_OFF;
  const { least, most, plus, minus } = machine.base;
  const set = least.equals(most) ? '' : ` ${id} ${half.part}`;
  const words = () =>
    set === '' ? say`base of ${machine.name}` : say`base of ${machine.name} as set for ${half.part} (${id})`;
  const tolerance = plus && minus ? { plus, minus } : undefined;
  return single(made.contributors.of(`machine ${machine.name}${set}`, 'machine', tolerance, words, machine.source));
}

function stop(made: AsMade, joint: FittedJoint, half: Half): Stack {
  const { jig } = made.spec.shop;
  const at = half.stop?.at ?? HERE;
  const { dirt } = made.tolerances;
  const words = (what: string) => () => say`${what} for ${half.part} (${joint.id})`;
  const held = oneWay(made, `dirt stop ${joint.id} ${half.part}`, 'dirt', dirt, words('dirt at the stop'));
  if (!jig?.stop || !inRange(jig, at)) return line(made, joint, half, 'across');
  const set = made.tolerances.stop;
  const id = `stop ${joint.id} ${half.part}`;
  return stacked(
    off(at.isZero() ? Rational.ZERO : nearestStep(jig, at).sub(at)),
    single(made.contributors.of(id, 'stop', set?.tolerance, words('stop'), set?.source)),
    reversed(held),
  );
}

/** An edge's reference face lies on the machine's base or the bed; whatever lifts it brings the slot nearer to it. */
function lifted(made: AsMade, joint: FittedJoint, half: Half): Stack {
  const { cup, dirt } = made.tolerances;
  const held = made.spec.shop.jig?.hold !== undefined;
  const words = (what: string) => () => say`${what} ${half.part} (${joint.id})`;
  const under = oneWay(made, `dirt under ${joint.id} ${half.part}`, 'dirt', dirt, words('dirt under'));
  const bowed = held
    ? NOTHING_OFF
    : oneWay(made, `cup ${half.part}`, 'cup', cup, () => say`cup of ${half.part}, not held flat`);
  return reversed(stacked(under, bowed));
}

/** How much further from their datum edge a half's slots lie than the table says, along the run. */
export function alongOff(made: AsMade, joint: FittedJoint, half: Half): Stack {
  const { jig } = made.spec.shop;
  const read = line(made, joint, half, 'along');
  if (!jig || jig.fences.length === 0) return read;
  const { dirt, fence } = made.tolerances;
  const words = () => say`${half.hand} fence`;
  const place = single(made.contributors.of(`fence ${half.hand}`, 'fence', fence?.tolerance, words, fence?.source));
  const dirty = () => say`dirt at the fence, ${half.part} (${joint.id})`;
  const away = oneWay(made, `dirt fence ${joint.id} ${half.part}`, 'dirt', dirt, dirty);
  return stacked(read, place, reversed(away), reversed(spacer(made, joint, half)));
}

/** A spacer that is too wide keeps the part away from the fence, and brings its slots nearer to its datum edge. */
function spacer(made: AsMade, joint: FittedJoint, half: Half): Stack {
  const { spacer: wanted } = half;
  const tolerance = made.tolerances.spacer;
  const of = (id: string, words: () => Text) =>
    single(made.contributors.of(id, 'spacer', tolerance?.tolerance, words, tolerance?.source));
  if (wanted.kind === 'cut' || wanted.kind === 'missing')
    return of(`block ${joint.id} ${half.part}`, () => say`block of ${wanted.width} for ${half.part} (${joint.id})`);
  if (wanted.kind !== 'stock') return NOTHING_OFF;
  const seen = new Map<string, number>();
  const pieces = wanted.stack.map((piece) => {
    const nth = (seen.get(piece.toString()) ?? 0) + 1;
    seen.set(piece.toString(), nth);
    return of(`spacer ${piece} ${nth}`, () =>
      nth === 1 ? say`spacer ${piece}` : say`spacer ${piece}, the ${String(nth)}th of its width`,
    );
  });
  return stacked(off(wanted.off), ...pieces);
}

/** A line that is read by eye: once for a half, since its slots are laid off from one another. */
function line(made: AsMade, joint: FittedJoint, half: Half, way: 'along' | 'across'): Stack {
  const { line: eye } = made.tolerances;
  const words = () => say`line read by eye ${way === 'along' ? 'along' : 'across'} ${half.part} (${joint.id})`;
  return single(
    made.contributors.of(`line ${way} ${joint.id} ${half.part}`, 'line', eye?.tolerance, words, eye?.source),
  );
}

function oneWay(
  made: AsMade,
  id: string,
  origin: Origin,
  figure: { readonly most: Rational; readonly source: Toleranced['source'] } | undefined,
  words: () => Text,
): Stack {
  const tolerance: Tolerance | undefined = figure && { plus: figure.most, minus: Rational.ZERO };
  return single(made.contributors.of(id, origin, tolerance, words, figure?.source));
}
