import { Rational, say } from '@dryfit/engine';
import type { Cure, Fix } from './fix.js';
import { jointOf, titled } from './support/facts.js';
import { decent } from './support/figures.js';
import { UNUSED } from './support/follow.js';
import { connectOf, fittedOf, leastFromEnd, setLines, stretchOf } from './support/lines.js';

/** Gives a joint two lines of its own, as far apart as its ends let them or a little nearer. */
export const twoLines: Fix = {
  name: 'two-lines',
  codes: ['joint-can-rotate', 'pair-too-short', 'no-connector-lands', 'no-connectors'],
  mayFollow: UNUSED,
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const fitted = fittedOf(about);
    const stretch = fitted && stretchOf(fitted);
    const shop = about.result?.spec.shop;
    if (!joint || !fitted || !stretch || !shop) return;
    const named = connectOf(about)?.connector;
    const connectors = named === undefined ? [...shop.connectors.values()] : [shop.connectors.get(named)];
    const length = stretch.to.sub(stretch.from);
    const reach = shop.jig?.reach ?? shop.jig?.bed;
    for (const connector of connectors) {
      if (!connector) continue;
      const least = Rational.max(
        leastFromEnd(about, fitted),
        connector.along.div(Rational.TWO).add(shop.limits.slotToEdge).add(Rational.of(3)),
      );
      // A machine stands no nearer to the fence than half its body, and reaches no further than the jig lets it.
      const fence = shop.machines.get(connector.machine)?.body?.div(Rational.TWO) ?? Rational.ZERO;
      for (const inset of [least, least.add(Rational.of(10)), length.div(Rational.of(4)), length.div(Rational.of(3))]) {
        const last = stretch.to.sub(inset);
        const lines = [
          decent(Rational.max(stretch.from.add(inset), fence), about.unit, 'more'),
          decent(reach ? Rational.min(last, reach) : last, about.unit, 'less'),
        ] as const;
        if (lines[0].ge(lines[1])) continue;
        yield {
          title: titled(
            say`Put two lines into this joint, ${lines[0]} and ${lines[1]}: connect ${connector.name} by lines ${lines[0]}, ${lines[1]}`,
            about.unit,
          ),
          edits: [setLines(about, joint, connector.name, lines)],
        };
      }
    }
  },
};
