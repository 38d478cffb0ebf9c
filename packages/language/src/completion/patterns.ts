import { type Connector, type Layout, type Pattern, Rational, type Shop } from '@dryfit/engine';
import type { Lengths } from '../hover/lengths.js';
import { type Offer, RANK } from './offer.js';
import { foundJoints, shortestRun } from './run.js';
import type { Situation } from './situation.js';

/** Patterns: first those whose lines all land on the run, then the others with the length they need. */
export function patternOffers(situation: Situation, lengths: Lengths): Offer[] {
  const { around, file, tail } = situation;
  const shop = around.shop(file);
  const connector = shop.connectors.get(/(\S+) by$/.exec(tail)?.[1] ?? '');
  const run = shortestRun(foundJoints(situation));
  return [...around.names(file, 'Pattern').keys()].map((name) => {
    const pattern = shop.patterns.get(name);
    const why = pattern && run && whyNot(pattern, run, connector, shop, lengths);
    const detail = why ?? (pattern && layoutWords(pattern.layout, lengths));
    return { label: name, kind: 'stock', rank: why ? RANK.unfit : RANK.fits, detail, names: { type: 'Pattern', name } };
  });
}

/**
 * What a pattern lacks on a run: room for its outermost lines, and beyond these for half a connector and what the
 * shop wants left up to an edge. A line that the pattern lets go near an end is not missed.
 */
function whyNot(
  { layout }: Pattern,
  { from, to }: { readonly from: Rational; readonly to: Rational },
  connector: Connector | undefined,
  { limits }: Shop,
  lengths: Lengths,
): string | undefined {
  const half = (connector?.slot ?? connector?.along ?? Rational.ZERO).div(Rational.TWO);
  if (layout.kind === 'spread') {
    const needs = layout.first.add(layout.last);
    const run = to.sub(from);
    return run.lt(needs) ? `needs ${lengths.of(needs)}, the run is ${lengths.of(run)}` : undefined;
  }
  const room = layout.skip ?? half.add(limits.slotToEdge);
  const lines = [...layout.lines].sort((a, b) => a.compare(b));
  const [first = Rational.ZERO, last = first] = [lines[0], lines.at(-1)];
  const needs = layout.skip ? last : last.add(room);
  if (to.lt(needs)) return `needs ${lengths.of(needs)}, the run is ${lengths.of(to)}`;
  return first.lt(from) ? `begins at ${lengths.of(first)}, the run at ${lengths.of(from)}` : undefined;
}

/** In few words where the lines lie. */
function layoutWords(layout: Layout, lengths: Lengths): string {
  if (layout.kind === 'lines') return `lines ${lengths.list(layout.lines)}`;
  const { first, last, most, pitch } = layout;
  const steps = most ? `, pitch at most ${lengths.of(most)}` : pitch ? `, pitch ${lengths.of(pitch)}` : '';
  return `first ${lengths.of(first)}, last ${lengths.of(last)}${steps}`;
}
