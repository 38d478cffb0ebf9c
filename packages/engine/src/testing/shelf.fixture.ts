import fc from 'fast-check';
import type { Side } from '../spec/sides.js';
import type { Spec } from '../spec/spec.js';
import type { Shop, Tolerances } from '../spec/stock.js';
import { at, datum, fact, flush, reference } from './joint-items.js';
import { material } from './shop-builder.js';
import { sides } from './spec-builder.js';
import { mm } from './written.js';

const source = { uri: 'test:shop.joinery', start: 0, end: 1 };

/** So much too long or too short, mm. */
export const either = (by: string) => ({ value: mm(0), tolerance: { plus: mm(by), minus: mm(by) }, source });
/** So much at most, and only one way, mm. */
export const oneWay = (by: string) => ({ most: mm(by), source });

/** What a shop holds that knows its saw, its jig and its dirt. */
export const HOLDS: Tolerances = {
  source,
  saw: either('0.1'),
  fence: either('0.05'),
  spacer: either('0.04'),
  stop: either('0.1'),
  line: either('0.15'),
  dirt: oneWay('0.1'),
  reckon: 'worst case',
};

/** A level part between two sides, and how it is measured. */
export interface Shelf {
  readonly from: Side;
  /** Flush with an end of the sides, or somewhere between. */
  readonly place: 'top' | 'bottom' | 'field';
  readonly datum: Side;
  /** How far its rear stands in from that of the sides, mm. */
  readonly setback: number;
}

/** What each of these may be. */
export const SHELF = {
  from: fc.constantFrom<Side>('top', 'bottom'),
  place: fc.constantFrom('top', 'bottom', 'field'),
  datum: fc.constantFrom<Side>('front', 'rear'),
  setback: fc.constantFrom(0, 6, 22),
} satisfies { readonly [K in keyof Shelf]: fc.Arbitrary<Shelf[K]> };

/** The sheet that the shelf is cut from; it comes thicker or thinner than the sides'. */
export const BOARD = material('board', '18 ± 0.4');

/** @param stock a shop that has `BOARD` */
export const shelfBetweenSides = ({ from, place, datum: side, setback }: Shelf, stock: Shop): Spec =>
  sides(stock)
    .part('shelf', 'level', 'board')
    .of('depth', 560 - setback, 'shelf')
    .connect('biscuit20', 'deep5')
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      flush('front'),
      place === 'field' ? fact(at('bottom', 350, 'above', 'lh.bottom')) : flush(place),
      reference(from),
      datum(side),
    )
    .build();
