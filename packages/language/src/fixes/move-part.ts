import {
  AXES,
  type Axis,
  highSide,
  lowSide,
  numbersThatMove,
  type PartId,
  Rational,
  SIDES,
  type Side,
  say,
  type Text,
} from '@dryfit/engine';
import type { Case, Cure, Fix } from './fix.js';
import { decent, lengthIn } from './support/figures.js';
import { fittedOf } from './support/lines.js';
import { cureByNumber } from './support/numbers.js';

/** A side that is to come further, by so much along its axis, from another one. */
interface Wish {
  readonly high: { readonly part: PartId; readonly side: Side };
  readonly low: { readonly part: PartId; readonly side: Side };
  readonly by: Rational;
  readonly so: Text;
}

/** Changes the number that puts a part where it is, by as much as it is in the way, stands out or lies off. */
export const movePart: Fix = {
  name: 'move-part',
  codes: ['parts-overlap', 'shelf-proud', 'thin-wall', 'slots-collide', 'no-contact'],
  most: 2,
  *offer(about): Iterable<Cure> {
    const spec = about.result?.spec;
    if (!spec) return;
    for (const { high, low, by, so } of wishes(about))
      for (const number of numbersThatMove(spec, high, low, by)) yield* cureByNumber(about, number, so);
  },
};

function* wishes(about: Case): Iterable<Wish> {
  const { code } = about.finding;
  if (code === 'parts-overlap') yield* apart(about);
  if (code === 'no-contact') yield* together(about);
  if (code === 'shelf-proud') yield* flush(about);
  if (code === 'thin-wall' || code === 'slots-collide') yield* along(about);
}

/** Two parts one beside the other, on the axis where least has to move. */
function* apart({ finding, result }: Case): Iterable<Wish> {
  const [one, two] = (finding.about.parts ?? []).map((id) => result?.fit.parts.find((part) => part.id === id));
  if (!one?.box || !two?.box) return;
  const found: Wish[] = [];
  for (const axis of AXES) {
    for (const [a, b] of [
      [one, two],
      [two, one],
    ] as const) {
      if (!a.box || !b.box) continue;
      // `a` before `b`: its high side no further than the low side of `b`.
      const by = a.box.hi[axis].sub(b.box.lo[axis]);
      found.push({
        high: { part: b.id, side: lowSide(axis) },
        low: { part: a.id, side: highSide(axis) },
        by,
        so: say`${b.id} begins where ${a.id} ends`,
      });
    }
  }
  yield* found.filter(({ by }) => by.sign() > 0).sort((a, b) => a.by.compare(b.by));
}

/** The two parts of a joint in one plane at an end, so that they lie side by side. */
function* together({ result, finding }: Case): Iterable<Wish> {
  const joint = result?.fit.joints.find(({ id }) => id === finding.about.joint);
  const [own, host] = [joint?.entering, joint?.host].map((id) => result?.fit.parts.find((part) => part.id === id));
  if (!joint || !own?.box || !host?.box) return;
  for (const axis of AXES) {
    if (axis === joint.axis) continue;
    for (const [end, side] of [
      ['lo', lowSide(axis)],
      ['hi', highSide(axis)],
    ] as const) {
      const by = host.box[end][axis].sub(own.box[end][axis]);
      if (by.isZero()) continue;
      const so = say`its ${side} is flush with ${host.id}`;
      yield { high: { part: own.id, side }, low: { part: host.id, side }, by, so };
    }
  }
}

/** The side that stands out in one plane with its host's. */
function* flush({ finding, result }: Case): Iterable<Wish> {
  const side = SIDES.find((one) => one === finding.data?.side);
  const by = lengthIn(finding.data?.by);
  const joint = result?.fit.joints.find(({ id }) => id === finding.about.joint);
  if (!side || !by || !joint) return;
  const own = { part: joint.entering, side };
  const host = { part: joint.host, side };
  const so = say`its ${side} is flush with ${joint.host}`;
  yield side === highSide(axisOfSide(side))
    ? { high: own, low: host, by: by.neg(), so }
    : { high: host, low: own, by: by.neg(), so };
}

/** The part whose slots are milled into a face of another, away from that one's end or from what it runs into. */
function* along(about: Case): Iterable<Wish> {
  const { finding, unit } = about;
  const joint = fittedOf(about);
  const half = joint?.halves.find(({ role }) => role === 'face');
  if (!joint || !half) return;
  const end = half.from.side;
  const edge = half.part === joint.host ? joint.entering : joint.host;
  const short = lengthIn(finding.data?.short);
  const away = finding.data?.side === end || finding.data?.side === undefined;
  const steps = short ? [decent(short, unit, 'more'), short] : STEPS;
  const face = end;
  for (const step of steps) {
    for (const by of finding.code === 'thin-wall' ? [away ? step : step.neg()] : [step, step.neg()]) {
      const own = { part: edge, side: face };
      const other = { part: half.part, side: end };
      const so = say`${edge} lies ${by.sign() > 0 ? 'further from' : 'nearer to'} the ${end} of ${half.part}`;
      yield end === highSide(axisOfSide(end)) ? { high: other, low: own, by, so } : { high: own, low: other, by, so };
    }
  }
}

const STEPS = [5, 10, 20].map((by) => Rational.of(by));

const axisOfSide = (side: Side): Axis => AXES.find((axis) => [lowSide(axis), highSide(axis)].includes(side)) ?? 'x';
