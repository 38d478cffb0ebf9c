import type { Rational } from '../number/rational.js';
import type { Shop } from '../spec/stock.js';
import { type Alike, alikeBeside, inRow, sparedBy } from './alike.js';
import { type Beside, besideEachOther } from './beside.js';
import type { Operation, WorkItem } from './operation.js';
import { counted, type FenceSpacers, mostOfEach, secondStack, without } from './rack.js';
import type { Setting } from './setting.js';
import type { Stages } from './stages.js';

/** What laying pieces of a set-up together takes to know. */
interface Bench {
  readonly shop: Shop | undefined;
  readonly stages: Stages;
  readonly items: readonly WorkItem[];
}

/** How the pieces of a set-up lie together, and the spacers that takes. */
export interface LaidTogether {
  readonly beside: readonly Beside[];
  readonly alike: readonly Alike[];
  readonly spacers: FenceSpacers | undefined;
}

/**
 * Pieces laid down together: at both fences, several alike at one of them, or first the one and then of what is left the
 * other, whichever lays down least often. Pieces at both fences come first where that is the same, since nothing adds to
 * their errors. Where each fence wants a stack of spacers, pieces lie at both only if the shop has two.
 */
export function laidTogether(own: readonly Operation[], setting: Setting, bench: Bench): LaidTogether {
  const { shop } = bench;
  const { spacer } = setting;
  if (!shop) return { beside: [], alike: [], spacers: undefined };
  if (spacer.kind !== 'stock' || !shop.jig) return { ...together(own, setting, shop, bench, true), spacers: undefined };
  const second = secondStack(spacer.stack, shop.jig);
  const laid = together(own, setting, shop, bench, second !== undefined);
  const goesTo = (hand: 'left' | 'right') => own.some(({ half }) => half.hand === hand);
  const [left, right] = [goesTo('left'), goesTo('right')];
  const atRight = left ? (second ?? spacer.stack) : spacer.stack;
  const fences = !left || !right ? 'one' : second ? 'both' : 'in turn';
  const spares = fences === 'in turn' ? spared(together(own, setting, shop, bench, true)) - spared(laid) : 0;
  const missing = without(spacer.stack, without(shop.jig.spacers, spacer.stack));
  const atOnce: readonly (readonly Rational[])[] = [
    fences === 'both' ? [...spacer.stack, ...atRight] : spacer.stack,
    ...laid.alike.map(({ between, pieces }) => [
      ...spacer.stack,
      ...Array.from({ length: pieces - 1 }, () => between).flat(),
    ]),
  ];
  return {
    ...laid,
    spacers: {
      left: left ? spacer.stack : [],
      right: right ? atRight : [],
      fences,
      lacks: spares > 0 ? { pieces: counted(missing), spares } : undefined,
      needed: mostOfEach(atOnce.map(counted)),
    },
  };
}

type Laid = Pick<LaidTogether, 'beside' | 'alike'>;

const spared = ({ beside, alike }: Laid): number => sparedBy(beside, alike);

/** @param atBoth whether pieces may lie at both fences at once */
function together(
  own: readonly Operation[],
  setting: Setting,
  shop: Shop,
  { stages, items }: Bench,
  atBoth: boolean,
): Laid {
  const bed = { setting, shop, stages, items };
  const rows = alikeBeside(own, ({ count }) => count, bed);
  if (!atBoth) return { beside: [], alike: rows };
  const pairs = besideEachOther(own, shop.jig, stages);
  const unpaired = (one: Operation) =>
    one.count - pairs.reduce((sum, { left, right, times }) => sum + (left === one || right === one ? times : 0), 0);
  const pairsFirst = { beside: pairs, alike: alikeBeside(own, unpaired, bed) };
  const single = (one: Operation) => one.count - rows.reduce((sum, row) => sum + inRow(row, one) * row.times, 0);
  const rowsFirst = { beside: besideEachOther(own, shop.jig, stages, single), alike: rows };
  return spared(rowsFirst) > spared(pairsFirst) ? rowsFirst : pairsFirst;
}
