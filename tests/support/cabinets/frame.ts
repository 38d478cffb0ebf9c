import { Rational } from '@dryfit/engine';
import type { Item, Writer } from './plan.js';

const tenths = (n: number): Rational => Rational.of(n, 10);

export interface FrameRecipe {
  /** Outside sizes and the width of stiles and rails, tenths of a millimetre. */
  readonly wide: number;
  readonly high: number;
  readonly stile: number;
  readonly rail: number;
  readonly reference: 'front' | 'rear';
  readonly datum: 'bottom' | 'top';
}

/** A face frame: rails between stiles, edge to edge. */
export function frameOf(recipe: FrameRecipe): readonly Item[] {
  const line = (head: (w: Writer) => string, facts?: readonly ((w: Writer) => string)[]): Item => ({ head, facts });
  const { wide, high, stile, rail, reference, datum } = recipe;
  const railItem = (name: string, side: 'top' | 'bottom'): Item =>
    line(
      (w) => `butt ${name} between ${w.across(`stileL.${w.side('right')}`, `stileR.${w.side('left')}`)}`,
      [() => `flush ${side}, front`, () => `reference ${reference}`, () => `datum ${datum}`],
    );
  return [
    line(() => 'part stileL, stileR, railT, railB : facing of board'),
    line((w) => `width ${w.sum(tenths(wide))} over ${w.across('stileL', 'stileR')}`),
    line((w) => `width ${w.sum(tenths(stile))} of stileL, stileR`),
    line((w) => `height ${w.sum(tenths(high))} of stileL, stileR`),
    line((w) => `height ${w.sum(tenths(rail))} of railT`),
    line((w) => `height ${w.sum(tenths(rail + 200))} of railB`),
    railItem('railT', 'top'),
    railItem('railB', 'bottom'),
    line(() => 'connect pin by row'),
  ];
}
