import { Rational } from '../number/rational.js';
import type { Band, Connector, Glue, Pack, Sold } from '../spec/stock.js';
import type { WorkItem } from '../work/operation.js';
import { bandLengths } from './bands.js';
import { countConnectors } from './connectors.js';
import { type GlueAreas, glueAreas } from './glue.js';
import { type Purchase, packsFor } from './packs.js';
import { USUAL_SPARE, USUAL_SPREAD } from './usual.js';

/** How much of something is needed, and what is bought, in whole connectors, mm of band, grams of glue. */
export interface Need {
  readonly needed: Rational;
  /** What comes on top for what is spoilt. */
  readonly spare: Rational;
  /** The same in parts of what is needed, and whether the shop has written it. */
  readonly share: { readonly of: Rational; readonly written: boolean };
  readonly inAll: Rational;
  /** Absent where the shop does not say what it is sold in. */
  readonly buy: Purchase | undefined;
}

export interface ConnectorNeed extends Need {
  readonly connector: Connector;
}

export interface BandNeed extends Need {
  readonly band: Band;
  readonly pieces: number;
}

export interface GlueNeed extends Need {
  /** Absent where the shop describes none: the language's own spread is taken. */
  readonly glue: Glue | undefined;
  /** g/m². */
  readonly spread: Rational;
  readonly areas: GlueAreas;
}

/** What a job uses up. */
export interface Consumables {
  /** By kind, in the order of their names. */
  readonly connectors: readonly ConnectorNeed[];
  readonly bands: readonly BandNeed[];
  /** Absent where nothing is glued. */
  readonly glue: GlueNeed | undefined;
}

/**
 * What the cabinets of a job use up, and what is bought for it. All is rounded up. A roll of band
 * is used up to its end: what is left of it then counts among the spare.
 * @param items cabinets that share one shop; where two give one name to different things, the first one's is taken
 */
export function consumablesOf(items: readonly WorkItem[]): Consumables {
  const made = items.filter(({ count }) => count > 0);
  const connectors = made.flatMap(({ count, result }) =>
    countConnectors(result.fit).map((one) => ({
      of: one.connector,
      amount: Rational.of(one.count * count),
      pieces: 0,
    })),
  );
  const bands = made.flatMap(({ count, result }) =>
    bandLengths(result.fit, result.spec.shop).map(({ band, length, pieces }) => ({
      of: band,
      amount: length.mul(Rational.of(count)),
      pieces: pieces * count,
    })),
  );
  return {
    connectors: byName(connectors).map(({ of, amount }) => ({ connector: of, ...needOf(amount, of) })),
    bands: byName(bands).map(({ of, amount, pieces }) => ({ band: of, pieces, ...needOf(amount, of) })),
    glue: glueOf(made),
  };
}

interface Amount<T> {
  readonly of: T;
  readonly amount: Rational;
  readonly pieces: number;
}

/** Amounts of things of one name put together, in the order of the names. */
function byName<T extends { readonly name: string }>(amounts: readonly Amount<T>[]): readonly Amount<T>[] {
  const sums = new Map<string, Amount<T>>();
  for (const one of amounts) {
    const before = sums.get(one.of.name);
    sums.set(one.of.name, {
      of: before?.of ?? one.of,
      amount: (before?.amount ?? Rational.ZERO).add(one.amount),
      pieces: (before?.pieces ?? 0) + one.pieces,
    });
  }
  return [...sums.values()].sort((a, b) => (a.of.name < b.of.name ? -1 : 1));
}

function needOf(exact: Rational, { packs, spare: written }: Sold): Need {
  const needed = exact.ceil();
  const share = { of: written ?? USUAL_SPARE, written: written !== undefined };
  const spare = needed.mul(share.of).ceil();
  const inAll = needed.add(spare);
  return { needed, spare, share, inAll, buy: buying(inAll, packs) };
}

const buying = (inAll: Rational, packs: readonly Pack[] | undefined): Purchase | undefined =>
  packs && packsFor(inAll, packs);

/** mm² in a m². */
const SQUARE_METRE = Rational.of(1_000_000);

function glueOf(made: readonly WorkItem[]): GlueNeed | undefined {
  const all = made.map(({ count, result }) => {
    const { faces, connectors, layers } = glueAreas(result.fit, result.spec.shop);
    const times = Rational.of(count);
    return { faces: faces.mul(times), connectors: connectors.mul(times), layers: layers.mul(times) };
  });
  const sum = (key: keyof GlueAreas): Rational => Rational.sum(all.map((areas) => areas[key]));
  const areas: GlueAreas = { faces: sum('faces'), connectors: sum('connectors'), layers: sum('layers') };
  const area = areas.faces.add(areas.connectors).add(areas.layers);
  if (area.isZero()) return undefined;
  const glue = made[0]?.result.spec.shop.glue;
  const spread = glue?.spread ?? USUAL_SPREAD;
  return { glue, spread, areas, ...needOf(area.mul(spread).div(SQUARE_METRE), glue ?? {}) };
}
