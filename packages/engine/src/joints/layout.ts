import type { Line } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import type { Layout } from '../spec/stock.js';

/** The stretch of a run where two parts touch, as distances inward from zero, mm. */
export interface Stretch {
  readonly from: Rational;
  readonly to: Rational;
}

/**
 * The lines of a layout along a contact, each with what becomes of it: lines beyond the contact are not used,
 * lines within `skip` of an end of it are skipped, lines named in `leaveOut` are left out.
 */
export function layOut(layout: Layout, contact: Stretch, leaveOut: readonly Rational[]): readonly Line[] {
  const positions = layout.kind === 'lines' ? layout.lines : spread(layout, contact);
  const skip = layout.kind === 'lines' ? layout.skip : undefined;
  return [...positions]
    .sort((a, b) => a.compare(b))
    .map((fromZero) => ({ fromZero, use: useOf(fromZero, contact, skip, leaveOut) }));
}

function useOf(
  line: Rational,
  contact: Stretch,
  skip: Rational | undefined,
  leaveOut: readonly Rational[],
): Line['use'] {
  if (line.lt(contact.from) || line.gt(contact.to)) return 'outside contact';
  if (leaveOut.some((left) => left.equals(line))) return 'left out';
  if (skip && (line.sub(contact.from).lt(skip) || contact.to.sub(line).lt(skip))) return 'skipped';
  return 'used';
}

/**
 * First and last from the ends of the contact. With `most`, the fewest equal intervals not longer than it:
 * n = ⌈(L − first − last)/most⌉. With `pitch`, fixed steps that stop short. With neither, two lines. A contact
 * too short for first and last carries one line at its middle.
 */
function spread(layout: Extract<Layout, { kind: 'spread' }>, contact: Stretch): readonly Rational[] {
  const start = contact.from.add(layout.first);
  const span = contact.to.sub(layout.last).sub(start);
  if (span.sign() < 0) return [contact.from.add(contact.to).div(Rational.TWO)];
  if (span.isZero()) return [start];
  const { pitch } = layout;
  if (pitch && pitch.sign() > 0) {
    const steps = Number(span.div(pitch).floor().numerator);
    return count(steps).map((i) => start.add(pitch.mul(Rational.of(i))));
  }
  const steps = layout.most && layout.most.sign() > 0 ? Number(span.div(layout.most).ceil().numerator) : 1;
  return count(steps).map((i) => start.add(span.mul(Rational.of(i, steps))));
}

/** No run in a cabinet carries more lines than this; a pitch of a hair must not fill the memory. */
const MOST_LINES = 1000;

const count = (steps: number): number[] => Array.from({ length: Math.min(steps, MOST_LINES) + 1 }, (_, i) => i);
