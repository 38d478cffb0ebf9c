import type { FitResult, FittedJoint, Half } from '../fit/fit.js';
import { inRange, stopPlace } from '../joints/stops.js';
import { Rational } from '../number/rational.js';
import type { Shop } from '../spec/stock.js';
import { type AtBench, addAcross, addAlong } from '../tolerance/bench-errors.js';
import { type Origin, Shared } from '../tolerance/contributor.js';
import type { JointError } from '../tolerance/joint-errors.js';
import { furthestIn, USUAL_RECKONING } from '../tolerance/judge.js';
import { Sum, worstCase } from '../tolerance/stack.js';
import { broughtBy } from '../tolerance/tried.js';
import type { Setting } from './setting.js';

/**
 * Why a figure may be no less or no more. `step`: the step that is let pass at the joint, half of what is left of it for
 * each of its halves; `held`: more than that the shop says its bench is never off; `closing`: the connector has to find room,
 * half of what is to spare in each half; `skin`: what has to be left under the slot; `connector`: it has to go in.
 */
export interface Bound {
  /** mm. */
  readonly at: Rational;
  readonly by: 'step' | 'held' | 'closing' | 'skin' | 'connector';
}

/** What a figure may be; a bound that is absent is not written by the shop, or there is none. */
export interface Bounds {
  readonly least?: Bound | undefined;
  readonly most?: Bound | undefined;
}

export const NO_BOUNDS: Bounds = {};

/** Words of a shop file that would give a bound. */
export type Unsaid =
  | 'step in limits'
  | 'skin under slot in limits'
  | 'fence in tolerances'
  | 'line in tolerances'
  | 'stop in tolerances'
  | 'base to centre with ±'
  | 'spacer in tolerances';

/** The closer of two bounds, either way. */
export function tighter(a: Bounds, b: Bounds): Bounds {
  const least = a.least && b.least ? (a.least.at.ge(b.least.at) ? a.least : b.least) : (a.least ?? b.least);
  const most = a.most && b.most ? (a.most.at.le(b.most.at) ? a.most : b.most) : (a.most ?? b.most);
  return { least, most };
}

/** A half as it is milled, and what measuring it from its other sides adds to its errors along and across, mm. */
export interface Milled {
  readonly half: Half;
  readonly along?: Rational | undefined;
  readonly across?: Rational | undefined;
}

/**
 * How far off a half may be, as an error from the table: further from what it is measured from, or deeper, is more.
 * Whatever two halves are off within their bounds, their joint is within its own.
 */
export function boundsOf(
  way: 'across' | 'along' | 'depth',
  result: FitResult,
  joint: FittedJoint,
  milled: Milled,
  setting: Setting,
): { readonly bounds: Bounds; readonly unsaid: readonly Unsaid[] } {
  const { half } = milled;
  if (way === 'depth') return depthBounds(result, joint, half);
  const { shop } = result.spec;
  const fromJoint = jointBounds(way, result, joint, milled[way] ?? Rational.ZERO);
  const held = heldBounds(way, shop, joint, half, setting);
  return { bounds: tighter(fromJoint.bounds, held.bounds), unsaid: [...fromJoint.unsaid, ...held.unsaid] };
}

/** What the bench brings to a half; the rest is in the parts themselves. */
const BENCH: readonly Origin[] = ['machine', 'fence', 'spacer', 'stop', 'line', 'cup', 'dirt'];

/**
 * Half of the step that is let pass, less what the parts themselves add to it. Where faces are meant to be one on both
 * sides, the thickness of the sheets comes in on one of them and is not the half's to make up for: the other side counts.
 */
function jointBounds(way: 'across' | 'along', result: FitResult, joint: FittedJoint, adds: Rational) {
  const { limits, tolerances } = result.spec.shop;
  const isMitre = joint.meeting === 'mitre' && way === 'across';
  const kind = way === 'across' ? 'step' : 'flush';
  const errors = isMitre ? [] : result.errors(joint.id).filter((error) => error.kind === kind);
  if (!isMitre && errors.length === 0) return { bounds: NO_BOUNDS, unsaid: [] };
  if (!limits.written.includes('step')) return { bounds: NO_BOUNDS, unsaid: ['step in limits' as const] };
  const rest = (error: JointError): Rational => {
    const parts = broughtBy(error.adds, ({ origin }) => !BENCH.includes(origin));
    const { value, error: by } = furthestIn(parts, tolerances?.reckon ?? USUAL_RECKONING);
    return Rational.of(Math.ceil((value + by) * 1e6), 1e6);
  };
  const least = isMitre ? Rational.ZERO : errors.map(rest).reduce((a, b) => Rational.min(a, b));
  const each = Rational.max(Rational.ZERO, limits.step.sub(least).div(Rational.TWO).sub(adds));
  return { bounds: either(each.neg(), each, 'step'), unsaid: [] };
}

const either = (least: Rational, most: Rational, by: Bound['by']): Bounds => ({
  least: { at: least, by },
  most: { at: most, by },
});

/**
 * How far off the shop says it comes, all at once; no bound where it has not said it of everything that matters, since what
 * nobody has written would count as nothing.
 */
function heldBounds(way: 'across' | 'along', shop: Shop, joint: FittedJoint, half: Half, setting: Setting) {
  const unsaid = way === 'across' ? unsaidAcross(shop, joint, half) : unsaidAlong(shop, half);
  if (unsaid.length > 0) return { bounds: NO_BOUNDS, unsaid };
  const made: AtBench = { shared: new Shared(), tolerances: shop.tolerances ?? {}, spec: { shop } };
  const sum = new Sum();
  const into = { sum, factor: Rational.ONE };
  if (way === 'across') addAcross(into, made, joint, half, false);
  else addAlong(into, made, joint, asSet(half, setting));
  const { least, most } = worstCase(sum.done());
  return { bounds: either(Rational.min(least, Rational.ZERO), Rational.max(most, Rational.ZERO), 'held'), unsaid };
}

/** A half with the spacers that its set-up takes. */
function asSet(half: Half, { spacer }: Setting): Half {
  if (spacer.kind !== 'stock' || half.spacer.kind !== 'stock') return half;
  const off = Rational.sum(spacer.stack).sub(half.spacer.width);
  return { ...half, spacer: { ...half.spacer, stack: spacer.stack, off } };
}

function unsaidAcross({ jig, tolerances }: Shop, { machine }: FittedJoint, { stop }: Half): Unsaid[] {
  const list: Unsaid[] = [];
  if (!machine?.base.plus && !machine?.base.minus) list.push('base to centre with ±');
  if (!stop || stop.at.isZero()) return list;
  const isSet = jig?.stop && inRange(jig, stopPlace(stop));
  if (isSet && !tolerances?.stop) list.push('stop in tolerances');
  if (!isSet && !tolerances?.line) list.push('line in tolerances');
  return list;
}

/** Along a cant lines are marked out, whatever jig there is. */
function unsaidAlong({ jig, tolerances }: Shop, { spacer, turn }: Half): Unsaid[] {
  const list: Unsaid[] = [];
  if (!tolerances?.line) list.push('line in tolerances');
  if (!turn && jig && jig.fences.length > 0 && !tolerances?.fence) list.push('fence in tolerances');
  if ((spacer.kind === 'stock' || spacer.kind === 'cut') && !tolerances?.spacer) list.push('spacer in tolerances');
  return list;
}

/**
 * A half may be shallower by half of what both are deeper than the connector and its glue need, so that both may; and no
 * deeper in a face than leaves the shop's skin of the thinnest sheet.
 */
function depthBounds({ spec, fit }: FitResult, { connector, halves }: FittedJoint, half: Half) {
  const [first, second] = halves;
  const bounds: { least?: Bound; most?: Bound } = {};
  const unsaid: Unsaid[] = [];
  if (connector && first && second) {
    const needed = connector.across.add(connector.clearance ?? Rational.ZERO);
    const spare = Rational.max(Rational.ZERO, first.depth.add(second.depth).sub(needed));
    bounds.least = { at: spare.div(Rational.TWO).neg(), by: 'closing' };
  }
  if (half.role === 'face') {
    const name = fit.parts.find(({ id }) => id === half.part)?.material;
    const material = name === undefined ? undefined : spec.shop.materials.get(name);
    const sheet = spec.thickness === 'measured' ? (material?.measured ?? material?.thickness) : material?.thickness;
    if (!spec.shop.limits.written.includes('skin')) unsaid.push('skin under slot in limits');
    else if (sheet) {
      const thinnest = sheet.value.sub(sheet.tolerance?.minus ?? Rational.ZERO);
      const most = thinnest.sub(spec.shop.limits.skin).sub(half.depth);
      bounds.most = { at: Rational.max(Rational.ZERO, most), by: 'skin' };
    }
  }
  return { bounds, unsaid };
}
