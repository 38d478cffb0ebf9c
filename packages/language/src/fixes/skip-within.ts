import { Rational, say } from '@dryfit/engine';
import type { Cure, Fix } from './fix.js';
import { jointOf, titled } from './support/facts.js';
import { decent, lengthIn } from './support/figures.js';
import { UNUSED } from './support/follow.js';
import { connectOf, fittedOf, leastFromEnd, linesOf, setLines, stretchOf } from './support/lines.js';

/** Leaves out whatever line comes too near to an end of the joint, in every size the cabinet is made in. */
export const skipWithin: Fix = {
  name: 'skip-within',
  codes: ['slot-near-edge'],
  mayFollow: UNUSED,
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const [fitted, connect] = [fittedOf(about), connectOf(about)];
    const stretch = fitted && stretchOf(fitted);
    const line = lengthIn(about.finding.data?.line);
    if (!joint || !fitted || !connect || !stretch || !line) return;
    const near = Rational.min(line.sub(stretch.from), stretch.to.sub(line));
    for (const skip of [leastFromEnd(about, fitted), near.add(Rational.ONE)]) {
      const within = decent(skip, about.unit, 'more');
      yield {
        title: titled(say`Leave out lines nearer than ${within} to an end: skip within ${within}`, about.unit),
        edits: [setLines(about, joint, connect.connector, linesOf(fitted), within)],
      };
    }
  },
};
