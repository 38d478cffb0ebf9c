import { Rational } from '../number/rational.js';
import { thicknessAxis } from '../spec/sides.js';
import type { Jig, Shop } from '../spec/stock.js';
import { USUAL_RECKONING } from '../tolerance/judge.js';
import type { Beside } from './beside.js';
import type { Operation, WorkItem } from './operation.js';
import { without } from './rack.js';
import { roomAlong } from './room.js';
import type { Setting } from './setting.js';
import type { Stages } from './stages.js';

/**
 * Pieces that lie side by side at one fence, pressed against each other: the slots of each lie on lines that are further from
 * the fence by the pieces before it and by what stands between them.
 */
export interface Alike {
  /** That of the piece at the fence. */
  readonly operation: Operation;
  /** Whose pieces lie in one row, from the fence on: those of one operation, or of several that are milled alike. */
  readonly shares: readonly Share[];
  /** How many lie on the bed at once, 2 or more, and how often. */
  readonly pieces: number;
  readonly times: number;
  /** From a line of one piece to the same line of the next, mm. */
  readonly pitch: Rational;
  /** Spacers between two of them. */
  readonly between: readonly Rational[];
  /** Lines of each piece from the fence, mm; those of the first are the operation's own. */
  readonly lines: readonly (readonly Rational[])[];
  /** Of these, the ones that are not set with the pattern and are marked beside its lines. */
  readonly marked: readonly Rational[];
  /**
   * How much further off the slots of the last piece may lie, mm, by the widths, the spacers and the dirt before it: all of it
   * at once, and by root sum square; absent where the shop has not written how true its saw cuts.
   */
  readonly adds?: { readonly worstCase: Rational; readonly rootSumSquare: Rational } | undefined;
}

/** Pieces of one operation in a row. */
export interface Share {
  readonly operation: Operation;
  /** ≥ 1. */
  readonly pieces: number;
}

/** How many pieces of an operation lie in a row at once; 0 where it is not in it. */
export const inRow = ({ shares }: Alike, operation: Operation): number =>
  shares.find((one) => one.operation === operation)?.pieces ?? 0;

/** What laying pieces alike beside each other takes to know. */
export interface Bed {
  readonly setting: Setting;
  readonly shop: Shop;
  readonly stages: Stages;
  readonly items: readonly WorkItem[];
}

/**
 * Pieces that can lie beside others that are milled alike, as many at once as go on the bed: lines of a pattern are where they
 * are, so that a piece further out needs lines of the pattern where its own come to lie; lines that are laid off for the
 * set-up can be laid off again. Common practice, no source.
 * @param left by the number of an operation, how many of its pieces do not lie at the other fence beside another
 */
export function alikeBeside(
  operations: readonly Operation[],
  left: (operation: Operation) => number,
  bed: Bed,
): readonly Alike[] {
  return pooled(operations, bed.stages).flatMap((pool) => {
    const found: Alike[] = [];
    const waiting = pool.map((operation) => ({ operation, pieces: left(operation) }));
    const inAll = () => waiting.reduce((sum, { pieces }) => sum + pieces, 0);
    for (let most = Math.min(inAll(), MOST); most >= 2 && inAll() >= 2; most = Math.min(most - 1, inAll())) {
      const one = laid(pool, most, bed);
      if (!one) continue;
      // Rows of one operation first, since they are told more shortly; what is left of several fills rows together.
      for (const own of waiting) {
        const times = Math.floor(own.pieces / most);
        if (times > 0) found.push({ ...one, operation: own.operation, shares: [{ ...own, pieces: most }], times });
        own.pieces -= times * most;
      }
      while (inAll() >= most) {
        const shares = taken(waiting, most);
        found.push({ ...one, operation: shares[0]?.operation ?? one.operation, shares, times: 1 });
      }
    }
    return found;
  });
}

/** So many pieces of what waits, in its order. */
function taken(waiting: { readonly operation: Operation; pieces: number }[], most: number): readonly Share[] {
  let open = most;
  return waiting.flatMap((own): Share[] => {
    const pieces = Math.min(open, own.pieces);
    own.pieces -= pieces;
    open -= pieces;
    return pieces > 0 ? [{ operation: own.operation, pieces }] : [];
  });
}

/**
 * Operations whose pieces can lie in one row: of one stage, so that none holds up another; equally wide and thick, on the same
 * lines at the same fence; and of other pieces each, since no piece lies beside itself.
 */
function pooled(operations: readonly Operation[], stages: Stages): readonly (readonly Operation[])[] {
  const pools: { readonly key: string; readonly pool: Operation[]; readonly pieces: Set<string> }[] = [];
  for (const operation of operations) {
    const { half, along, part, number } = operation;
    const thickness = part.extent[thicknessAxis(part.attitude)];
    const lines = half.slots.map(({ fromZero }) => fromZero).join(' ');
    const isKnown = along !== undefined && thickness !== undefined;
    const key = isKnown ? [stages.of[number], half.hand, along, thickness, lines].join('; ') : `alone ${number}`;
    const own = operation.pieces.flatMap(({ item, parts }) => parts.map((id) => `${item} ${id}`));
    const fitting = pools.find((one) => one.key === key && !own.some((piece) => one.pieces.has(piece)));
    if (!fitting) pools.push({ key, pool: [operation], pieces: new Set(own) });
    else {
      fitting.pool.push(operation);
      for (const piece of own) fitting.pieces.add(piece);
    }
  }
  return pools.map(({ pool }) => pool);
}

/** More pieces than this are not handled at once: common practice, no source. */
const MOST = 6;

function laid(pool: readonly Operation[], pieces: number, bed: Bed): Omit<Alike, 'times' | 'shares'> | undefined {
  const [operation] = pool;
  if (!operation) return undefined;
  const { half, along } = operation;
  const { jig } = bed.shop;
  if (!jig?.bed || !along || half.turn || !jig.fences.includes(half.hand) || bed.setting.spacer.kind === 'mark out')
    return undefined;
  for (const between of betweens(jig, bed.setting, pieces)) {
    const pitch = along.add(Rational.sum(between));
    const further = Rational.of(pieces - 1).mul(pitch);
    if (spacerOf(bed.setting).add(along).add(further).gt(jig.bed)) continue;
    const own = half.slots.map(({ fromZero }) => fromZero);
    const lines = Array.from({ length: pieces }, (_, i) => own.map((line) => line.add(pitch.mul(Rational.of(i)))));
    const set = new Set(bed.setting.lines.map(String));
    const marked = lines.flat().filter((line) => !set.has(String(line)));
    if (marked.length > 0 && bed.setting.pattern !== undefined) continue;
    const reach = jig.reach ?? jig.bed;
    if (lines.flat().some((line) => line.gt(reach))) continue;
    const adds = addsUp(pieces - 1, between, bed.shop);
    if (!pool.every((one) => closeEnough(one, adds, bed))) continue;
    return { operation, pieces, pitch, between, lines, marked, adds };
  }
  return undefined;
}

const spacerOf = ({ spacer }: Setting): Rational =>
  spacer.kind === 'stock' ? Rational.sum(spacer.stack) : spacer.kind === 'cut' ? spacer.width : Rational.ZERO;

/** Nothing between two pieces first; between just two, any of the spacers that the set-up leaves over. */
function betweens(jig: Jig, { spacer }: Setting, pieces: number): readonly (readonly Rational[])[] {
  if (pieces > 2) return [[]];
  const left = without(jig.spacers, spacer.kind === 'stock' ? spacer.stack : []);
  const singles = left.map((piece) => [piece]);
  const pairs = left.flatMap((one, i) => left.slice(i + 1).map((other) => [one, other]));
  return [[], ...singles, ...pairs];
}

/** Each piece before another brings its own width's error, that of the spacers beside it, and dirt between the two. */
function addsUp(before: number, between: readonly Rational[], { tolerances }: Shop): Alike['adds'] {
  const saw = tolerances?.saw?.tolerance;
  if (!saw) return undefined;
  const spacer = tolerances.spacer?.tolerance;
  const each = [
    Rational.max(saw.plus, saw.minus),
    ...between.map(() => (spacer ? Rational.max(spacer.plus, spacer.minus) : Rational.ZERO)),
    tolerances.dirt?.most ?? Rational.ZERO,
  ];
  const worstCase = Rational.sum(each).mul(Rational.of(before));
  const squared = Rational.sum(each.map((one) => one.mul(one))).toNumber() * before;
  // Upwards to a ten-thousandth, so that it is never told or taken for less.
  const rootSumSquare = Rational.of(Math.ceil(Math.sqrt(squared) * 10_000 - 1e-6), 10_000);
  return { worstCase, rootSumSquare };
}

/** Edges stay flush within what a step may be, if both halves of a joint are milled so. */
function closeEnough(operation: Operation, adds: Alike['adds'], { shop, items }: Bed): boolean {
  if (!adds) return true;
  const reckoning = shop.tolerances?.reckon ?? USUAL_RECKONING;
  const own = reckoning === 'worst case' ? adds.worstCase : adds.rootSumSquare;
  return own.mul(Rational.TWO).le(roomAlong(operation, shop, items, reckoning));
}

/** How many times fewer a piece is laid down. */
export const sparedBy = (pairs: readonly Beside[], alike: readonly Alike[]): number =>
  pairs.reduce((sum, { times }) => sum + times, 0) +
  alike.reduce((sum, { times, pieces }) => sum + times * (pieces - 1), 0);
