import type { Shop } from '@dryfit/engine';
import { connector, machine, material, shop } from '../../packages/engine/src/testing/shop-builder.js';
import { type Dice, mm } from './dice.js';

/** The figures of a shop that an assembly is made up from, mm. */
export interface Figures {
  readonly thickness: number;
  readonly disc: number;
  readonly kerf: number;
  /** Plunge of the disc in a face and in an edge. */
  readonly face: number;
  readonly edge: number;
  /** Length, width and depths of the mortises. */
  readonly mortise: { readonly length: number; readonly bit: number; readonly face: number; readonly edge: number };
  readonly dowel: { readonly bit: number; readonly face: number; readonly edge: number };
  readonly edgeLimit: number;
  readonly wall: number;
  readonly skin: number;
}

export function figures(dice: Dice): Figures {
  const thickness = dice.between(14, 26);
  const face = Math.min(dice.between(7, 14), thickness - 4);
  return {
    thickness,
    disc: dice.between(60, 120),
    kerf: dice.between(2.5, 5),
    face,
    edge: dice.between(8, 15),
    mortise: {
      length: dice.between(16, 26),
      bit: dice.between(5, 8),
      face: dice.between(8, 12),
      edge: dice.between(14, 30),
    },
    dowel: { bit: dice.between(6, 10), face: dice.between(8, 12), edge: dice.between(15, 30) },
    edgeLimit: dice.between(3, 12),
    wall: dice.between(2, 5),
    skin: dice.between(1, 5),
  };
}

/** Half the length of a disc's slot at the surface. */
export const halfChord = (disc: number, plunge: number): number =>
  2 * plunge >= disc ? disc / 2 : Math.sqrt(plunge * (disc - plunge));

/** A connector by its measures, and the machine that cuts for it. */
export interface Odd {
  readonly shape: 'biscuit' | 'loose tenon' | 'dowel';
  readonly along: number;
  readonly across: number;
  readonly thickness: number;
  readonly slot?: number;
  readonly glue?: number;
  readonly face: number;
  readonly edge: number;
  readonly machine: 'joiner1' | 'mortiser1' | 'drill1';
}

/** Boards and machines without tolerances, so that the thinnest sheet is the sheet; `odd` is one more connector. */
export function shopOf(f: Figures, odd?: Odd): Shop {
  const chord = 2 * halfChord(f.disc, Math.min(f.face, f.edge));
  return shop({
    materials: [material('board', mm(f.thickness)), material('thin', 6)],
    machines: [
      machine('joiner1', 'disc', { diameter: mm(f.disc), kerf: mm(f.kerf), base: 2, to: 60 }),
      machine('mortiser1', 'mortiser', { diameter: mm(f.mortise.bit), base: 2, to: 60 }),
      machine('drill1', 'drill', { diameter: mm(f.dowel.bit), base: 2, to: 60 }),
    ],
    connectors: [
      connector('plate', 'biscuit', {
        along: mm(chord * 0.85),
        across: mm(f.face + f.edge - 0.8),
        thickness: mm(f.kerf),
        face: mm(f.face),
        edge: mm(f.edge),
        machine: 'joiner1',
      }),
      connector('tenon', 'loose tenon', {
        along: mm(f.mortise.length - 1),
        slot: mm(f.mortise.length),
        across: mm(f.mortise.face + f.mortise.edge - 1),
        thickness: mm(f.mortise.bit),
        face: mm(f.mortise.face),
        edge: mm(f.mortise.edge),
        machine: 'mortiser1',
      }),
      connector('dowel', 'dowel', {
        along: mm(f.dowel.bit),
        across: mm(f.dowel.face + f.dowel.edge - 1),
        thickness: mm(f.dowel.bit),
        face: mm(f.dowel.face),
        edge: mm(f.dowel.edge),
        machine: 'drill1',
      }),
      ...(odd
        ? [
            connector('odd', odd.shape, {
              along: mm(odd.along),
              across: mm(odd.across),
              thickness: mm(odd.thickness),
              ...(odd.slot === undefined ? {} : { slot: mm(odd.slot) }),
              ...(odd.glue === undefined ? {} : { clearance: mm(odd.glue) }),
              face: mm(odd.face),
              edge: mm(odd.edge),
              machine: odd.machine,
            }),
          ]
        : []),
    ],
    limits: { slotToEdge: mm(f.edgeLimit), wall: mm(f.wall), skin: mm(f.skin) },
  });
}
