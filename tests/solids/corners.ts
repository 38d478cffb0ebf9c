import { across, at, connect, flush, outer } from '../../packages/engine/src/testing/joint-items.js';
import { lines } from '../../packages/engine/src/testing/shop-builder.js';
import type { SpecBuilder } from '../../packages/engine/src/testing/spec-builder.js';
import { type Dice, mm } from './dice.js';
import { type Figures, halfChord, type Odd } from './stock.js';

import { DEEP, HIGH, ROW, shelfAt, uprights } from './uprights.js';

export function mitred(f: Figures, from: number, odd?: Odd): SpecBuilder {
  return uprights(f, ['lh', 'rh'], odd)
    .part('top', 'level', 'board')
    .joint(
      'mitre',
      'top',
      'between lh and rh',
      outer('top'),
      flush('rear', 'front'),
      across(mm(from)),
      connect('plate', lines(...ROW)),
    );
}

export const middleOfMitre = (f: Figures): number => f.thickness * Math.SQRT2 * 0.7;

/** A slot in a mitre, near the outer face or near the heel. */
export function inMitre(f: Figures, dice: Dice, off: number): SpecBuilder {
  const half = f.kerf / 2;
  const from = dice.one([true, false])
    ? half + f.edge + Math.SQRT2 * (f.skin + off)
    : Math.SQRT2 * f.thickness - half - f.wall - off;
  return mitred(f, from);
}

/** A shelf whose slots in a side come near to its mitre. */
export function nearMitre(f: Figures, dice: Dice, off: number): SpecBuilder {
  const c = f.thickness - f.kerf / 2 - dice.between(1, 6);
  const z = HIGH - f.thickness - f.kerf / 2 - c - f.skin - off;
  return mitred(f, middleOfMitre(f))
    .part('shelf', 'level', 'board')
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(z, c, 'plate', ...ROW));
}

/** A notch in the sides, and slots beside it or above it. */
export function atNotch(f: Figures, dice: Dice, off: number): SpecBuilder {
  const h = halfChord(f.disc, f.face);
  const [deep, high] = [dice.between(40, 90), dice.between(50, 110)];
  const c = f.thickness / 2;
  const beside = dice.one([true, false]);
  const z = beside ? high - dice.between(f.thickness, 40) : high + f.skin + off - c + f.kerf / 2;
  const last = beside ? DEEP - deep - h - f.skin - off : DEEP - 70;
  return uprights(f, ['lh', 'rh'])
    .part('shelf', 'level', 'board')
    .notch('lh, rh', ['front', 'bottom'], { depth: mm(deep), height: mm(high) })
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(z, c, 'plate', 75, last));
}

/** A base with a corner cut off, and slots or a block that come near the slope. */
export function atCant(f: Figures, dice: Dice, off: number): SpecBuilder {
  const [wide, deep] = [dice.between(40, 120), dice.between(40, 120)];
  const beside = dice.one([true, false]);
  const line = beside ? DEEP - deep - halfChord(f.disc, f.edge) - f.skin - off : 120;
  const built = uprights(f, ['lh', 'rh'])
    .part('base', 'level', 'board')
    .cant('base', ['left', 'front'], { width: mm(wide), depth: mm(deep) })
    .joint('butt', 'base', 'between lh and rh', ...shelfAt(60, f.thickness / 2, 'plate', Math.min(50, line / 2), line));
  if (beside) return built;
  // Its inner corner lies so far before the slope or behind it.
  const y = dice.between(-30, deep / 2 - 40);
  const x = wide * (1 - off * Math.hypot(1 / wide, 1 / deep) - (y + 40) / deep) - f.thickness;
  return built
    .part('block', 'upright', 'board')
    .of('height', 90, 'block')
    .of('depth', 40, 'block')
    .place('block', at('left', mm(x), 'right of', 'base.left'))
    .place('block', at('bottom', 30, 'above', 'lh.bottom'))
    .place('block', at('front', mm(y), 'behind', 'lh.front'));
}
