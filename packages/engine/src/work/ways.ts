import type { FittedPart, Half } from '../fit/fit.js';
import { canStand } from '../joints/stops.js';
import { partAsThick, stopsOfJoints, type Uneven, unevenEndsOf } from '../joints/uneven-ends.js';
import { Rational } from '../number/rational.js';
import { type Axis, axisOf, highSide, lowSide, opposite, type Side } from '../spec/sides.js';
import type { Jig, Shop } from '../spec/stock.js';
import type { Operation, WorkItem } from './operation.js';
import { roomAt } from './room.js';
import { type Setting, settingKey, settingsOf } from './setting.js';

/** A way to mill an operation: how the bench is set, and the half as it then lies there. */
export interface Way {
  readonly setting: Setting;
  readonly half: Half;
  /** Where it is milled otherwise than its joint asks. */
  readonly otherwise?: MilledOtherwise | undefined;
}

/** What is done otherwise than a joint asks: the slots are the same ones. */
export interface MilledOtherwise {
  /** The reference looks the other way, which the shop's pose allows. */
  readonly pose: boolean;
  /** Measured from the other edge along the run. */
  readonly datum: boolean;
  /** Measured from the other end or face across the joint. */
  readonly end: boolean;
  /** Held off the stop by a block, so that the stop stands where the part's other end has it. */
  readonly block: boolean;
  /** How much further off its slots may then lie, by the size they are measured over, mm; either way. */
  readonly adds: Rational;
}

/**
 * The ways that each operation can be milled, by its number; the first is what its joint asks for, if the jig has the fence
 * for it. Where it has not, the piece is held or measured the other way round if that gives the same slots. Measured
 * otherwise it is also where that spares a set-up, and the errors stay within what a step may be. An operation for which the
 * jig has no fence in any way keeps what its joint asks for; a check tells of it. A face that needs another stop than the
 * one at the other end of what stands between them may have that one and a block; it has to, where no stop stands at its own.
 */
export function waysOf(
  operations: readonly Operation[],
  shop: Shop,
  items: readonly WorkItem[],
): readonly (readonly Way[])[] {
  const stacks = new Map(
    operations.flatMap(({ half: { spacer } }): [string, readonly Rational[]][] =>
      spacer.kind === 'stock' ? [[spacer.stack.join('+'), spacer.stack]] : [],
    ),
  );
  const uneven = unevenHalves(items);
  const settled = (operation: Operation, half: Half, pose = false): readonly Setting[] =>
    settingsOf({ ...operation, half }, shop, [...stacks.values()], pose);
  const asked = operations.map((operation) =>
    settled(operation, operation.half).map((setting): Way => ({ setting, half: operation.half })),
  );
  const usual = new Set(
    asked.flatMap(([first]) => (first && hasFence(first.half, shop.jig) ? [settingKey(first.setting)] : [])),
  );
  return operations.map((operation, i) => {
    const { kept } = operation;
    const as = ({ half, ...otherwise }: Turned): readonly Way[] =>
      settled(operation, half, otherwise.pose).map((setting): Way => ({ setting, half, otherwise }));
    const packed = offTheStop(operation, uneven, shop, items);
    const blocked = packed ? as(packed) : [];
    const isReached = !packed || !operation.half.stop || !shop.jig || canStand(shop.jig, operation.half.stop.at);
    const own = isReached ? [...(asked[i] ?? []), ...blocked] : blocked;
    const others = () => turnedRound(operation, shop, items).flatMap(as);
    if (kept) {
      const key = settingKey(kept);
      const known = [...own, ...others()].find(({ setting }) => settingKey(setting) === key);
      return [known ?? { setting: kept, half: operation.half }];
    }
    if (hasFence(operation.half, shop.jig)) {
      const first = own[0] && settingKey(own[0].setting);
      const sparing = others().filter(
        ({ setting, otherwise }) =>
          otherwise?.pose === false && settingKey(setting) !== first && usual.has(settingKey(setting)),
      );
      return [...own, ...sparing.filter(({ half }) => hasFence(half, shop.jig))];
    }
    const all = others().filter(({ half }) => hasFence(half, shop.jig));
    // Held the other way up the slots come as true as ever, so measuring otherwise has to spare a set-up.
    const held = all.filter(({ otherwise }) => otherwise?.pose);
    const possible =
      held.length === 0
        ? all
        : [...held, ...all.filter((way) => !held.includes(way) && usual.has(settingKey(way.setting)))];
    return possible.length > 0 ? possible : own;
  });
}

/** Whether the jig has the fence that a half goes to; nothing goes to a fence where it is marked out. */
export function hasFence({ hand, spacer, turn }: Half, jig: Jig | undefined): boolean {
  if (!jig || jig.fences.length === 0 || turn || spacer.kind === 'mark out') return true;
  return jig.fences.includes(hand);
}

type Turned = MilledOtherwise & { readonly half: Half };

const AS_ASKED = { pose: false, datum: false, end: false, block: false, adds: Rational.ZERO };

/** Of each half that needs the lesser stop of two ends: how they differ. */
const unevenHalves = (items: readonly WorkItem[]): ReadonlyMap<Half, Uneven> =>
  new Map(
    items
      .flatMap(({ result }) => unevenEndsOf(stopsOfJoints(result.fit.joints)))
      .map((uneven): [Half, Uneven] => [uneven.less.half, uneven]),
  );

/**
 * The same face against a block at the stop of the part's other end. Its slots then come as much nearer to its end as the
 * block is thick; an offcut of the sheet that makes the difference is as thick as that came out, and adds nothing.
 */
function offTheStop(
  { half, part }: Operation,
  uneven: ReadonlyMap<Half, Uneven>,
  { jig, limits, tolerances }: Shop,
  items: readonly WorkItem[],
): Turned | undefined {
  const found = uneven.get(half);
  if (!found || !half.stop || half.turn || !jig?.stop || found.by.le(limits.step)) return undefined;
  if (!canStand(jig, found.more.at)) return undefined;
  const own = items.find(({ result }) => result.fit.parts.includes(part));
  const like = own && partAsThick(own.result.fit, found);
  const made = tolerances?.spacer?.tolerance;
  return {
    ...AS_ASKED,
    block: true,
    adds: like || !made ? Rational.ZERO : Rational.max(made.plus, made.minus),
    half: { ...half, stop: { ...half.stop, block: { width: found.by, like } } },
  };
}

/** A half held the other way up, or measured from the other side along or across the joint. */
function turnedRound(operation: Operation, shop: Shop, items: readonly WorkItem[]): readonly Turned[] {
  const { half } = operation;
  if (half.turn || half.spacer.kind === 'mark out') return [];
  const found: Turned[] = [];
  const either = shop.pose.either?.includes(half.role === 'face' ? 'face' : 'edge') ?? false;
  if (either) found.push({ ...AS_ASKED, pose: true, half: { ...half, hand: otherHand(half) } });
  if (!square(operation.part)) return found;
  const along = otherDatum(operation, shop, items);
  const across = otherEnd(operation, shop, items);
  if (along && within(operation, shop, items, along.adds, axisOf(half.datum)))
    found.push({ ...AS_ASKED, datum: true, ...along });
  if (across && within(operation, shop, items, across.adds, axisOf(half.from.side)))
    found.push({ ...AS_ASKED, end: true, ...across });
  return found;
}

const otherHand = ({ hand }: Half): Half['hand'] => (hand === 'left' ? 'right' : 'left');

/** Whether each side of a piece registers over its whole length as the one across from it does. */
const square = ({ cant, cuts, turn }: FittedPart): boolean =>
  !cant && !turn && !cuts.some(({ kind }) => kind === 'notch' || kind === 'bevel');

/** The same slots measured from the other edge of the part, without a spacer. */
function otherDatum(
  { half, part }: Operation,
  shop: Shop,
  items: readonly WorkItem[],
): Pick<Turned, 'half' | 'adds'> | undefined {
  const saw = shop.tolerances?.saw?.tolerance;
  const width = benchExtent(part, axisOf(half.datum), items);
  if (!saw || !width) return undefined;
  const slots = half.slots
    .map((slot) => ({ ...slot, fromDatum: width.sub(slot.fromDatum), fromZero: width.sub(slot.fromDatum) }))
    .reverse()
    .map((slot, i) => ({ ...slot, number: i + 1 }));
  const reach = shop.jig?.reach ?? shop.jig?.bed;
  if (slots.some(({ fromZero }) => fromZero.sign() <= 0 || reach?.lt(fromZero))) return undefined;
  const none = { width: Rational.ZERO, tolerance: NO_TOLERANCE, kind: 'none', stack: [], off: Rational.ZERO } as const;
  return {
    half: {
      ...half,
      datum: opposite(half.datum),
      setback: Rational.ZERO,
      spacer: none,
      hand: otherHand(half),
      slots,
    },
    adds: Rational.max(saw.plus, saw.minus),
  };
}

const NO_TOLERANCE = { plus: Rational.ZERO, minus: Rational.ZERO };

/** The same slots measured from the other end of the part, or an edge's from its other face. */
function otherEnd(
  { half, part, joint }: Operation,
  shop: Shop,
  items: readonly WorkItem[],
): Pick<Turned, 'half' | 'adds'> | undefined {
  const axis = axisOf(half.from.side);
  const extent = benchExtent(part, axis, items);
  const { machine } = joint;
  if (!extent || !machine || half.role === 'mitre') return undefined;
  const across = extent.sub(half.across);
  const side = opposite(half.from.side);
  const slots = half.slots.map((slot) => ({ ...slot, fromReference: across }));
  const turned = { ...half, from: { ...half.from, side }, across, hand: otherHand(half), slots };
  if (half.role === 'edge') {
    const strays = shop.materials.get(part.material)?.measured?.tolerance;
    if (!strays || across.lt(machine.base.least) || across.gt(machine.base.most)) return undefined;
    return { half: turned, adds: Rational.max(strays.plus, strays.minus) };
  }
  const saw = shop.tolerances?.saw?.tolerance;
  if (!half.stop || !saw || !shop.jig) return undefined;
  const at = across.sub(half.across.sub(half.stop.at));
  if (at.sign() < 0 || !canStand(shop.jig, at)) return undefined;
  return { half: { ...turned, stop: { end: side, at } }, adds: Rational.max(saw.plus, saw.minus) };
}

/** How long a piece is at the bench, without bands that come later. */
function benchExtent(part: FittedPart, axis: Axis, items: readonly WorkItem[]): Rational | undefined {
  const finished = part.extent[axis];
  const own = items.find(({ result }) => result.fit.parts.includes(part));
  if (own?.result.fit.milled !== 'before banding') return finished;
  const ends: readonly Side[] = [lowSide(axis), highSide(axis)];
  const bands = part.bands.filter(({ side }) => ends.includes(side)).map(({ thickness }) => thickness);
  return finished?.sub(Rational.sum(bands));
}

/** Whether a step stays within the shop's limit, everything off at once, if both halves of a joint are milled so. */
const within = (operation: Operation, shop: Shop, items: readonly WorkItem[], adds: Rational, axis: Axis): boolean =>
  adds.mul(Rational.TWO).le(roomAt(operation, shop, items, 'worst case', axis));
