import type { SpecBuilder } from '../../packages/engine/src/testing/spec-builder.js';
import type { Dice } from './dice.js';
import { type Figures, halfChord, type Odd } from './stock.js';

import { ROW, shelfAt, uprights } from './uprights.js';

/** A connector that another machine cuts for than it is shaped for; or one that is as long as its slot is. */
export function oddConnector(f: Figures, dice: Dice, off: number): SpecBuilder {
  const [r, p] = [f.disc / 2, f.face];
  const glue = dice.one([0, dice.between(0.3, 1.5)]);
  const shape = dice.one(['slip', 'slip', 'corners', 'corners', 'pin', 'plain', 'pointed'] as const);
  const depths = { face: p, edge: f.edge, glue };
  const a = dice.between(8, Math.max(9, halfChord(f.disc, Math.min(p, f.edge)) - 2));
  const room = (half: number): number => 2 * Math.sqrt(r * r - half * half) + p + f.edge - f.disc;
  const { bit } = f.mortise;
  const thick = dice.between(2, bit - 0.5);
  const odd: Odd = {
    slip: {
      ...depths,
      shape: 'loose tenon',
      along: 2 * a,
      slot: 2 * a,
      across: Math.max(1, room(a) - glue - off),
      thickness: f.kerf,
      machine: 'joiner1',
    } as const,
    pin: {
      ...depths,
      shape: 'dowel',
      along: f.kerf,
      across: Math.max(1, room(f.kerf / 2) - glue - off),
      thickness: f.kerf,
      machine: 'joiner1',
    } as const,
    corners: {
      shape: 'biscuit',
      face: 10,
      edge: 10,
      along: 40,
      across: 16,
      thickness: thick,
      slot: 40 + bit - Math.sqrt(bit * bit - thick * thick) + off,
      machine: 'mortiser1',
    } as const,
    plain: {
      ...depths,
      shape: 'biscuit',
      along: 2 * a,
      across: p + f.edge - glue - off,
      thickness: f.kerf - 0.1,
      machine: 'joiner1',
    } as const,
    pointed: {
      ...depths,
      shape: 'biscuit',
      along: 2 * halfChord(f.disc, Math.min(p, f.edge)) - 0.4 - off,
      across: p + f.edge - glue - 0.5,
      thickness: f.kerf - 0.1,
      machine: 'joiner1',
    } as const,
  }[shape];
  return uprights(f, ['lh', 'rh'], odd)
    .part('shelf', 'level', 'board')
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(120, f.thickness / 2, 'odd', ...ROW));
}
