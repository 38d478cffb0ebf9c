import { approach } from '../geometry/distance.js';
import type { Vector } from '../geometry/vector.js';
import type { Bounded } from '../number/bounded.js';
import { axisOf, opposite, thirdAxis } from '../spec/sides.js';
import type { CutBody } from './cuts.js';
import { pairsWithin } from './sweep.js';

/** Two cuts of one part, what is left between them, and where it is least. */
export interface NearCuts {
  readonly one: CutBody;
  readonly two: CutBody;
  /** Zero where they run into each other, mm. */
  readonly apart: Bounded;
  readonly from: Vector;
  readonly to: Vector;
}

/** The pairs of a part's cuts that leave less than `asked` mm between them, or no more than it within the bound. */
export function* nearCuts(bodies: readonly CutBody[], asked: number): Generator<NearCuts> {
  for (const [one, two] of pairsWithin(bodies, asked)) {
    const kind = mattersAs(one, two);
    if (kind === 'never') continue;
    const found = approach(one.solid(), two.solid(), asked);
    if (kind === 'when apart' && found.apart.value === 0) continue;
    yield { one, two, ...found };
  }
}

/**
 * Slots of one row are a matter of the row, and a slot belongs with the recess or bevel of its own joint. Recesses
 * may run into one another from one face, and a groove out through a bevel; then there is no web to break.
 */
function mattersAs(one: CutBody, two: CutBody): 'always' | 'when apart' | 'never' {
  if (one.row === two.row || (one.statement === two.statement && one.opening !== two.opening)) return 'never';
  const [a, b] = [one.cut, two.cut];
  // Slots told in the frame of a turned part lie in the cant that it stands on.
  if (a.kind === 'cant' || b.kind === 'cant') {
    const other = a.kind === 'cant' ? b : a;
    return 'slot' in other && !other.turn ? 'always' : 'when apart';
  }
  if (one.opening || two.opening) return 'always';
  if (a.kind === 'bevel' || b.kind === 'bevel') {
    const [bevel, recess] = a.kind === 'bevel' ? [a, b] : [b, a];
    if (bevel.kind !== 'bevel' || !('box' in recess)) return 'never';
    const alongTheEnd = thirdAxis(axisOf(bevel.side), axisOf(bevel.outer)) === recess.run;
    return recess.kind !== 'notch' && alongTheEnd ? 'always' : 'when apart';
  }
  const facing = a.kind !== 'notch' && b.kind !== 'notch' && one.surface === opposite(two.surface);
  return facing ? 'always' : 'when apart';
}
