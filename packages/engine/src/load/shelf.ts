import type { Fit, FittedPart } from '../fit/fit.js';
import type { Bounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Axis } from '../spec/sides.js';
import type { LoadStatement, PartId, Spec } from '../spec/spec.js';
import type { Limits } from '../spec/stock.js';
import { type Beam, deflection, FREE_FALL, longestSpan, type SpanLoad } from './beam.js';
import { type Board, boardOf } from './board.js';
import { type Gap, gapOf } from './supports.js';

/** How a part that carries something bends. Figures are estimates: see `assumptions` in the output. */
export interface Sag {
  readonly kind: 'sag';
  readonly part: PartId;
  /** The loads it carries; at least one. */
  readonly loads: readonly LoadStatement[];
  readonly gap: Gap;
  readonly beam: Beam;
  /** Whether its own weight is in the figures: only if its material's density is told. */
  readonly ownWeight: boolean;
  readonly creep?: Rational | undefined;
  /** What it sags at the middle of the gap when the load comes on, mm. */
  readonly first: Rational;
  /** What it sags in time under the load that stays, mm; absent where the material tells no creep. */
  readonly inTime?: Rational | undefined;
  /** What may be: at first, and in time where the shop has a limit for it, mm. */
  readonly may: { readonly first: Rational; readonly inTime?: Rational | undefined };
  /** The longest span that passes under the same load, mm, reckoned when asked for; absent where every span up to ten metres does. */
  readonly longest?: Bounded | undefined;
}

/** A load that nothing can be reckoned for, and why. */
export interface NotReckoned {
  readonly kind: 'not reckoned';
  readonly part: PartId;
  readonly loads: readonly LoadStatement[];
  readonly why: 'not level' | 'not borne twice' | 'no stiffness' | 'no stiffness across';
}

/** Every part that carries something, in the order of the parts; those whose sizes are not fixed are left out. */
export function shelvesUnderLoad(spec: Spec, fit: Fit): readonly (Sag | NotReckoned)[] {
  const loads = loadsOf(spec);
  if (loads.size === 0) return [];
  return fit.parts.flatMap((part) => {
    const own = loads.get(part.id);
    return own ? (shelfUnderLoad(spec, fit, part, own) ?? []) : [];
  });
}

/** How one part bends under what is written for it; undefined where nothing is, or its size is not fixed. */
export function sagOf(spec: Spec, fit: Fit, id: PartId): Sag | NotReckoned | undefined {
  const part = fit.parts.find((one) => one.id === id);
  const own = loadsOf(spec).get(id);
  return part && own && shelfUnderLoad(spec, fit, part, own);
}

function loadsOf(spec: Spec): ReadonlyMap<PartId, readonly LoadStatement[]> {
  const loads = new Map<PartId, LoadStatement[]>();
  for (const statement of spec.statements) {
    if (statement.kind !== 'load') continue;
    for (const part of statement.parts) loads.set(part, [...(loads.get(part) ?? []), statement]);
  }
  return loads;
}

function shelfUnderLoad(
  spec: Spec,
  fit: Fit,
  part: FittedPart,
  loads: readonly LoadStatement[],
): Sag | NotReckoned | undefined {
  const not = (why: NotReckoned['why']): NotReckoned => ({ kind: 'not reckoned', part: part.id, loads, why });
  if (part.attitude !== 'level') return not('not level');
  if (!part.box || fit.parts.some((other) => !other.box && meets(fit, part, other))) return undefined;
  const gap = gapOf(fit, part);
  if (!gap) return not('not borne twice');
  const board = boardOf(spec.shop, part, gap.axis);
  if (!board.stiffness) return not(board.across ? 'no stiffness across' : 'no stiffness');
  const [length, width, thickness] = [part.extent[gap.axis], part.extent[crosswise(gap.axis)], part.extent.z];
  if (!length || !width || !thickness) return undefined;
  const beam: Beam = {
    span: gap.length,
    width,
    thickness,
    stiffness: board.stiffness,
    ends: loads.every(({ ends }) => ends === 'fixed') ? 'fixed' : 'resting',
  };
  const load = spanLoad(loads, board, beam, length, gap);
  const { whole, beyond } = load;
  const first = deflection(beam, {
    spread: load.perLength.add(whole.div(gap.length.add(beyond))),
    middle: load.middle,
  });
  const { limits } = spec.shop;
  const creep = board.creep;
  const inTime = creep && first.mul(Rational.ONE.add(creep));
  return {
    kind: 'sag',
    part: part.id,
    loads,
    gap,
    beam,
    ownWeight: board.density !== undefined,
    creep,
    first,
    inTime,
    may: mayOf(limits, gap.length, inTime !== undefined),
    get longest() {
      return longestOf(beam, load, limits, creep);
    },
  };
}

const meets = (fit: Fit, a: FittedPart, b: FittedPart): boolean =>
  fit.joints.some(({ entering, host }) => (entering === a.id && host === b.id) || (entering === b.id && host === a.id));

const crosswise = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');

/** mm in a metre. */
const METRE = Rational.of(1000);

/**
 * Newtons on the beam. A load on the part is spread over all of its length; where it spans several gaps, each mm carries
 * its share whatever the gap, so that a longer gap would carry more.
 */
function spanLoad(loads: readonly LoadStatement[], board: Board, beam: Beam, length: Rational, gap: Gap): SpanLoad {
  let [perLength, whole, middle] = [Rational.ZERO, Rational.ZERO, Rational.ZERO];
  for (const { mass, lies } of loads) {
    const newtons = mass.amount.mul(FREE_FALL);
    if (mass.per === 'metre') perLength = perLength.add(newtons.div(METRE));
    else if (mass.per === 'square metre') perLength = perLength.add(newtons.mul(beam.width).div(METRE.mul(METRE)));
    else if (lies === 'middle') middle = middle.add(newtons);
    else if (gap.of > 1) perLength = perLength.add(newtons.div(length));
    else whole = whole.add(newtons);
  }
  if (board.density) {
    const volume = beam.width.mul(beam.thickness).div(METRE.mul(METRE).mul(METRE));
    perLength = perLength.add(board.density.mul(volume).mul(FREE_FALL));
  }
  return { perLength, whole, beyond: length.sub(gap.length), middle };
}

function mayOf(limits: Limits, span: Rational, creeps: boolean): Sag['may'] {
  const part = span.mul(limits.sag);
  const first = limits.sagAtMost ? Rational.min(part, limits.sagAtMost) : part;
  return { first, inTime: creeps && limits.sagInTime ? span.mul(limits.sagInTime) : undefined };
}

/** The longest span that passes at first and, where the shop limits it, in time. */
function longestOf(beam: Beam, load: SpanLoad, limits: Limits, creep: Rational | undefined): Bounded | undefined {
  const first = longestSpan(beam, load, { part: limits.sag, atMost: limits.sagAtMost });
  if (!creep || !limits.sagInTime) return first;
  const inTime = longestSpan(beam, load, { part: limits.sagInTime.div(Rational.ONE.add(creep)) });
  if (!first || !inTime) return first ?? inTime;
  return inTime.value < first.value ? inTime : first;
}
