import { SIDES, say } from '@dryfit/engine';
import type { Cure, Fix } from './fix.js';
import { writeInto } from './support/braces.js';
import { jointOf, titled } from './support/facts.js';
import { lengthIn, writtenAs } from './support/figures.js';
import { fittedOf } from './support/lines.js';

/** Says in the joint that a part is meant to stand out, and how far. */
export const sayProud: Fix = {
  name: 'say-proud',
  codes: ['shelf-proud'],
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const side = SIDES.find((one) => one === about.finding.data?.side);
    const by = lengthIn(about.finding.data?.by);
    const host = fittedOf(about)?.host;
    if (!joint || !side || !by || host === undefined) return;
    const line = `${side} proud ${writtenAs(by, about.unit)} of ${host}`;
    yield { title: titled(say`Say that it is meant: ${line}`, about.unit), edits: [writeInto(joint, line)] };
  },
};
