import type { Spec } from '@dryfit/engine';
import {
  across,
  at,
  connect,
  connectNone,
  cut,
  fact,
  flush,
  type Item,
  reference,
  setBack,
} from '../../packages/engine/src/testing/joint-items.js';
import { lines } from '../../packages/engine/src/testing/shop-builder.js';
import type { SpecBuilder } from '../../packages/engine/src/testing/spec-builder.js';
import { atCant, atNotch, inMitre, middleOfMitre, mitred, nearMitre } from './corners.js';
import { Dice, mm } from './dice.js';
import { oddConnector } from './odd-connector.js';
import { type Figures, figures, halfChord } from './stock.js';
import { DEEP, HIGH, ROW, shelfAt, uprights } from './uprights.js';

/**
 * Small assemblies, each made so that one measure comes out `off` mm beside its limit: rows back to back, slots at a
 * groove, at an edge, in a mitre and near one, parts in each other's way, and so on. What that limit comes to is worked
 * out here only to aim; what it really comes to is measured on meshes.
 */
export interface Plan {
  readonly kind: Aim;
  /** How far from its limit the measure aimed at lies, mm; negative where it is to fail. */
  readonly off: number;
  readonly rolls: readonly number[];
}

export type Aim = keyof typeof AIMS;

export function specOf({ kind, off, rolls }: Plan): Spec {
  const dice = new Dice(rolls);
  return AIMS[kind](figures(dice), dice, off).build();
}

/** Two rows in one divider, from its two faces. */
function backToBack(f: Figures, dice: Dice, off: number): SpecBuilder {
  const gap = Math.max(0.02, f.skin + off);
  const by = dice.one(['plate', 'plate', 'tenon', 'dowel'] as const);
  const c = f.thickness / 2;
  let [step, lift] = [0, 0];
  let shop = f;
  if (dice.one([true, true, false])) {
    const centres = f.disc - 2 * f.face + f.thickness;
    if (by === 'plate' && f.disc + gap > centres) step = Math.sqrt((f.disc + gap) ** 2 - centres ** 2);
    else if (by === 'plate') shop = { ...f, face: (f.thickness - gap) / 2 };
    else {
      const face = f.thickness / 2 + 1;
      shop = { ...f, mortise: { ...f.mortise, face }, dowel: { ...f.dowel, face } };
      step = gap + (by === 'tenon' ? f.mortise.length : f.dowel.bit);
    }
  } else lift = gap + { plate: f.kerf, tenon: f.mortise.bit, dowel: f.dowel.bit }[by];
  return uprights(shop, ['lh', 'divider', 'rh'])
    .part('lshelf, rshelf', 'level', 'board')
    .joint('butt', 'lshelf', 'between lh and divider', ...shelfAt(100, c, by, ...ROW))
    .joint('butt', 'rshelf', 'between divider and rh', ...shelfAt(100 + lift, c, by, ...ROW.map((y) => y + step)));
}

/** Slots in the ends of a base beside the groove for the back in its face. */
function grooveAndEnd(f: Figures, dice: Dice, off: number): SpecBuilder {
  const depth = dice.between(f.thickness / 2, f.thickness - f.skin);
  const line = 22 + halfChord(f.disc, f.edge) + f.skin + off;
  return uprights(f, ['lh', 'rh'])
    .part('base, top', 'level', 'board')
    .part('back', 'facing', 'thin')
    .joint('butt', 'top', 'between lh and rh', flush('top', 'rear', 'front'), connect('plate', lines(...ROW)))
    .joint(
      'butt',
      'base',
      'between lh and rh',
      flush('bottom', 'rear', 'front'),
      across(mm(f.thickness / 2)),
      connect('plate', lines(mm(line), 230)),
    )
    .joint(
      'groove',
      'back',
      'between lh and rh, base and top',
      fact(setBack('rear', 16, 'lh')),
      cut({ width: 6, depth: mm(depth), clearance: '0.5' }),
    );
}

/** One shelf, with a slot too near to an edge, a face or the far side, or nearly. */
function oneShelf(f: Figures, dice: Dice, off: number): SpecBuilder {
  const where = dice.one(['datum', 'far end', 'below', 'above', 'through', 'end of the side'] as const);
  const h = halfChord(f.disc, Math.max(f.face, f.edge));
  const beside = f.kerf / 2 + f.wall + off;
  let [first, last, c, z, shop] = [90, 230, f.thickness / 2, 120, f];
  if (where === 'datum') first = h + f.edgeLimit + off;
  if (where === 'far end') last = DEEP - h - f.edgeLimit - off;
  if (where === 'below') c = beside;
  if (where === 'above') c = f.thickness - beside;
  if (where === 'through') shop = { ...f, thickness: f.face + f.skin + off };
  if (where === 'end of the side') z = beside - c;
  return uprights(shop, ['lh', 'rh'])
    .part('shelf', 'level', 'board')
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(z, c, 'plate', first, last));
}

/** A rail that stands on a shelf, in it, or a little above it; sometimes in a notch of the shelf. */
function railOnShelf(f: Figures, dice: Dice, off: number): SpecBuilder {
  const notched = dice.one([true, false]);
  const [legDepth, legHeight] = [f.thickness + dice.between(-2, 2), dice.between(4, 10)];
  const built = uprights(f, ['lh', 'rh'])
    .part('shelf', 'level', 'board')
    .part('rail', 'facing', 'board')
    .of('height', 90, 'rail')
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(100, f.thickness / 2, 'plate', ...ROW))
    .joint(
      'butt',
      'rail',
      'between lh and rh',
      fact(at('bottom', mm(100 + f.thickness - (notched ? legHeight : 0) + off), 'above', 'lh.bottom')),
      flush('rear'),
      connectNone('glued'),
    );
  return notched ? built.notch('shelf', ['rear', 'top'], { depth: mm(legDepth), height: mm(legHeight) }) : built;
}

/** A block somewhere in the corner of a mitre, beside its slope or across it. */
function blockInCorner(f: Figures, dice: Dice, off: number): SpecBuilder {
  const x = dice.between(-f.thickness + 1, f.thickness + 2);
  const high = dice.between(30, 90);
  const top = dice.one([true, false]) ? HIGH - f.thickness - off : HIGH - dice.between(-5, f.thickness + 5);
  const y = dice.one([dice.between(-5, DEEP - 20), DEEP + off]);
  return mitred(f, middleOfMitre(f))
    .part('block', 'upright', 'board')
    .of('height', mm(high), 'block')
    .of('depth', 40, 'block')
    .place('block', at('left', mm(x), 'right of', 'lh.left'))
    .place('block', at('bottom', mm(top - high), 'above', 'lh.bottom'))
    .place('block', at('front', mm(y), 'behind', 'lh.front'));
}

/** A shelf let into stopped housings, and wider than these are long by so much. */
function inHousing(f: Figures, dice: Dice, off: number): SpecBuilder {
  const stopped = dice.between(8, 20);
  const depth = dice.one([dice.between(3, 6), f.thickness - f.skin - off]);
  const wall = Math.max(0.5, dice.one([stopped, f.wall + off]));
  return uprights(f, ['lh', 'rh'])
    .part('shelf', 'level', 'board')
    .joint(
      'house',
      'shelf',
      'between lh and rh',
      fact(at('bottom', 120, 'above', 'lh.bottom')),
      fact(setBack('front', mm(wall + off), 'lh')),
      fact(setBack('rear', mm(wall + 1), 'lh')),
      cut({ depth: mm(depth), stopped: mm(wall) }),
    );
}

/** Housings from both faces of a divider, one above the other in a side, or near its end. */
function housings(f: Figures, dice: Dice, off: number): SpecBuilder {
  const where = dice.one(['back to back', 'one above the other', 'at the end'] as const);
  const gap = Math.max(0.02, f.skin + off);
  const one = dice.between(2, f.thickness / 3);
  const two = where === 'back to back' ? f.thickness - gap - one : dice.between(2, 5);
  const wall = Math.max(0.02, f.wall + off);
  const lift = where === 'back to back' ? dice.between(-10, 10) : f.thickness + gap;
  const low = where === 'at the end' ? wall : 120;
  const house = (z: number, depth: number): readonly Item[] => [
    fact(at('bottom', mm(z), 'above', 'lh.bottom')),
    flush('rear', 'front'),
    cut({ depth: mm(depth) }),
  ];
  const pair = where === 'one above the other' ? 'between lh and divider' : 'between divider and rh';
  return uprights(f, ['lh', 'divider', 'rh'])
    .part('lshelf, rshelf', 'level', 'board')
    .joint('house', 'lshelf', 'between lh and divider', ...house(low, one))
    .joint('house', 'rshelf', pair, ...house(where === 'at the end' ? 200 : low + lift, two));
}

/** A row whose slots come near one another. */
function crowded(f: Figures, dice: Dice, off: number): SpecBuilder {
  const by = dice.one(['plate', 'plate', 'tenon', 'dowel'] as const);
  const length = {
    plate: 2 * halfChord(f.disc, dice.one([f.face, f.edge])),
    tenon: f.mortise.length,
    dowel: f.dowel.bit,
  }[by];
  return uprights(f, ['lh', 'rh'])
    .part('shelf', 'level', 'board')
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(120, f.thickness / 2, by, 90, 90 + length + f.skin + off));
}

/** A rail with mortises over a shelf with slots, both in the sides. */
function rowsCross(f: Figures, dice: Dice, off: number): SpecBuilder {
  const c = f.thickness - f.kerf / 2 - 2;
  const first = f.mortise.length / 2 - 2 + f.skin + off;
  const line = f.thickness / 2 + dice.between(-10, 10) + halfChord(f.disc, f.face) - 6;
  return uprights(f, ['lh', 'rh'])
    .part('shelf', 'level', 'board')
    .part('rail', 'facing', 'board')
    .of('height', 120, 'rail')
    .joint('butt', 'shelf', 'between lh and rh', ...shelfAt(100, c, 'plate', line, 230))
    .joint(
      'butt',
      'rail',
      'between lh and rh',
      fact(at('bottom', mm(100 + f.thickness), 'above', 'lh.bottom')),
      flush('rear'),
      across(mm(f.thickness / 2)),
      connect('tenon', lines(mm(first), 80)),
    );
}

/** Nothing aimed at: two shelves and a rail at random. */
function atRandom(f: Figures, dice: Dice): SpecBuilder {
  const row = (): readonly number[] => {
    const from = dice.between(20, 150);
    return [from, from + dice.between(30, 150)];
  };
  const by = (): string => dice.one(['plate', 'tenon', 'dowel']);
  const c = (): number => dice.between(3, f.thickness - 3);
  return uprights(f, ['lh', 'divider', 'rh'])
    .part('lshelf, rshelf', 'level', 'board')
    .part('rail', 'facing', 'board')
    .of('height', 110, 'rail')
    .joint('butt', 'lshelf', 'between lh and divider', ...shelfAt(dice.between(60, 200), c(), by(), ...row()))
    .joint('butt', 'rshelf', 'between divider and rh', ...shelfAt(dice.between(60, 200), c(), by(), ...row()))
    .joint(
      'butt',
      'rail',
      'between lh and divider',
      fact(at('bottom', mm(dice.between(80, 240)), 'above', 'lh.bottom')),
      fact(setBack('rear', mm(dice.between(0, 120)), 'lh')),
      reference('rear'),
      across(mm(c())),
      connect(by(), lines(25, mm(dice.between(60, 85)))),
    );
}

const AIMS = {
  backToBack,
  grooveAndEnd,
  oneShelf,
  inMitre,
  nearMitre,
  railOnShelf,
  blockInCorner,
  inHousing,
  housings,
  oddConnector,
  atNotch,
  atCant,
  crowded,
  rowsCross,
  atRandom,
} as const;

export const aims = Object.keys(AIMS) as readonly Aim[];
