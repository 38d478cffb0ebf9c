import type { Half } from '../fit/fit.js';
import { addBounded, type Bounded, boundedOf, mulBounded, subBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Side } from '../spec/sides.js';
import { type Bounds, boundsOf, type Milled, NO_BOUNDS, tighter, type Unsaid } from './first-piece-bounds.js';
import { halvesOf, type Operation, type WorkItem } from './operation.js';
import type { SetUp } from './plan.js';

/**
 * What is measured on the first piece. `across`: from the reference to the slots; `first` and `last`: from the datum edge to
 * the slots nearest to it and furthest from it; `only`: to the one slot there is; `depth`, `width` and `length`: of a slot.
 */
export type Measured = 'across' | 'first' | 'last' | 'only' | 'depth' | 'width' | 'length';

/** One thing to be measured on the first piece, mm. */
export interface FirstMeasure {
  readonly what: Measured;
  /** The side of the piece it is measured from; absent for what is measured of the slot itself. */
  readonly from?: Side | undefined;
  /** What it should be: to the middle of the slot, or of the slot itself. */
  readonly wanted: Rational;
  /**
   * From the middle of the slot to its walls (across) or to its ends (along): nobody can measure to a middle, so one
   * measures to both. Absent for what is measured of the slot itself.
   */
  readonly toWall?: Rational | Bounded | undefined;
  /** What it may be, to the middle of the slot. */
  readonly bounds: Bounds;
}

/** What to measure on the piece that is milled first at a fence, before the others are. */
export interface FirstPiece {
  readonly operation: Operation;
  readonly hand: Half['hand'];
  readonly measures: readonly FirstMeasure[];
  /** What the shop has not written, without which there is no bound where one would be. */
  readonly unsaid: readonly Unsaid[];
}

/**
 * The first piece at each fence of a set-up, the left one first. It stands for all that are milled with the setting, so it has the closest of
 * their bounds.
 * @param items the job that the set-up is of
 */
export function firstPieces(setUp: SetUp, items: readonly WorkItem[]): readonly FirstPiece[] {
  const hands = (['left', 'right'] as const).filter((hand) => setUp.operations.some(({ half }) => half.hand === hand));
  return hands.flatMap((hand) => {
    const same = setUp.operations.filter(({ half }) => half.hand === hand);
    const [operation] = same;
    return operation ? [firstPiece(setUp, operation, same, items)] : [];
  });
}

function firstPiece(
  setUp: SetUp,
  operation: Operation,
  same: readonly Operation[],
  items: readonly WorkItem[],
): FirstPiece {
  const { half, joint } = operation;
  const { machine, connector } = joint;
  // What is set across the joint and how deep is one setting for both fences; the lines are one for each.
  const across = allBounds(setUp, setUp.operations, items, 'across');
  const depth = allBounds(setUp, setUp.operations, items, 'depth');
  const along = allBounds(setUp, same, items, 'along');
  const places = half.slots.map(({ fromDatum, length }) => ({ fromDatum, length }));
  const inOrder = places.sort((a, b) => a.fromDatum.compare(b.fromDatum));
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  const measures: FirstMeasure[] = [
    {
      what: 'across',
      from: half.from.side,
      wanted: half.across,
      toWall: machine?.kerf.div(Rational.TWO),
      bounds: about(half.across, across.bounds),
    },
  ];
  const slot = (what: Measured, at: typeof first) => {
    if (!at) return;
    const toWall = mulBounded(at.length, boundedOf(Rational.of(1, 2)));
    measures.push({ what, from: half.datum, wanted: at.fromDatum, toWall, bounds: about(at.fromDatum, along.bounds) });
  };
  slot(inOrder.length > 1 ? 'first' : 'only', first);
  if (inOrder.length > 1) slot('last', last);
  measures.push({ what: 'depth', wanted: half.depth, bounds: about(half.depth, depth.bounds) });
  if (machine && connector) {
    const goesIn = { at: connector.thickness, by: 'connector' as const };
    measures.push({ what: 'width', wanted: machine.kerf, bounds: { least: goesIn } });
    if (connector.slot && connector.shape !== 'dowel')
      measures.push({
        what: 'length',
        wanted: connector.slot,
        bounds: { least: { at: connector.along, by: 'connector' } },
      });
  }
  const unsaid = [...new Set([...across.unsaid, ...along.unsaid, ...depth.unsaid])];
  return { operation, hand: half.hand, measures, unsaid };
}

/** The closest bounds of everything that is milled with the setting, as errors from what is wanted. */
function allBounds(
  setUp: SetUp,
  operations: readonly Operation[],
  items: readonly WorkItem[],
  way: 'across' | 'along' | 'depth',
): { readonly bounds: Bounds; readonly unsaid: readonly Unsaid[] } {
  let bounds: Bounds = NO_BOUNDS;
  const unsaid = new Set<Unsaid>();
  for (const operation of operations)
    for (const { result, joint, half } of halvesOf(operation, items)) {
      const found = boundsOf(way, result, joint, asMilled(operation, half), setUp.setting);
      bounds = tighter(bounds, found.bounds);
      for (const one of found.unsaid) unsaid.add(one);
    }
  return { bounds, unsaid: [...unsaid] };
}

/** A half as the plan mills it; where that is not as its joint asks, what it adds to the errors comes off its bounds. */
function asMilled({ half, otherwise }: Operation, asked: Half): Milled {
  if (!otherwise) return { half: asked };
  const { adds, datum, end } = otherwise;
  return { half: { ...half, part: asked.part }, along: datum ? adds : undefined, across: end ? adds : undefined };
}

/** Bounds of an error as bounds of what is measured. */
const about = (wanted: Rational, { least, most }: Bounds): Bounds => ({
  least: least && { ...least, at: wanted.add(least.at) },
  most: most && { ...most, at: wanted.add(most.at) },
});

/** A place to the nearer or farther wall of a slot whose middle is at `at`, mm. */
export function wallAt(at: Rational, toWall: Rational | Bounded, wall: 'nearer' | 'farther'): Rational | Bounded {
  if (toWall instanceof Rational) return wall === 'nearer' ? at.sub(toWall) : at.add(toWall);
  return wall === 'nearer' ? subBounded(boundedOf(at), toWall) : addBounded(boundedOf(at), toWall);
}
