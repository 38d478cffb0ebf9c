import { Rational, type Side } from '@dryfit/engine';
import { mm } from '../spelling.js';
import type { Item, Writer } from './plan.js';

const tenths = (n: number): Rational => Rational.of(n, 10);
type Fact = (w: Writer) => string;

export interface CaseRecipe {
  /** Outside sizes, tenths of a millimetre. */
  readonly wide: number;
  readonly high: number;
  readonly deep: number;
  readonly corner: 'top between sides' | 'sides between top and base' | 'mitred top';
  /** How far a grooved back stands in from the rear, tenths; a back is glued between the sides, or there is none. */
  readonly back:
    | { readonly kind: 'grooved'; readonly setBack: number }
    | { readonly kind: 'butted' }
    | { readonly kind: 'none' };
  /** Where a divider stands: midway, or so far right of the left side (tenths). */
  readonly divider: 'none' | 'midway' | number;
  /** Heights of shelves left of the divider (or over the whole width), tenths above the base. */
  readonly heights: readonly number[];
  /** How many even openings right of the divider; none without one. */
  readonly openings: number;
  readonly openingStep: boolean;
  /** How far the shelves stand in from the front, tenths; 0 is flush. */
  readonly shelfBack: number;
  readonly rail: boolean;
  readonly kick: boolean;
  readonly loose: boolean;
  readonly bands: 'none' | 'before' | 'after' | 'unsaid';
  /** Slots at a written distance from the reference, in the middle of the thickness, or as the machine is set. */
  readonly across: 'machine' | 'centred' | 'written';
}

const item = (head: Fact, facts?: readonly Fact[]): Item => ({ head, facts });
const parts = (names: string, attitude: string, material: string): Item =>
  item(() => `${names.includes(' to ') ? 'parts' : 'part'} ${names} : ${attitude} of ${material}`);

/** A case of two sides, top and base, and what stands in it; every size of it follows. */
export function caseOf(recipe: CaseRecipe): readonly Item[] {
  return [
    ...carcase(recipe),
    ...backItems(recipe),
    ...dividerItems(recipe),
    ...shelfItems(recipe),
    ...extras(recipe),
    item(() => 'connect pin by row'),
    item((w) => `datum ${w.side('left')}`),
  ];
}

function acrossFact({ across }: CaseRecipe): readonly Fact[] {
  if (across === 'machine') return [];
  return [(w) => (across === 'centred' ? 'centred in thickness' : `at ${w.sum(mm('7.4'))} from reference`)];
}

function carcase(recipe: CaseRecipe): readonly Item[] {
  const { wide, high, deep, corner } = recipe;
  const across = acrossFact(recipe);
  const base = [
    parts('lh, rh', 'upright', 'board'),
    parts('top, base', 'level', 'board'),
    item((w) => `depth ${w.sum(tenths(deep))} of lh, rh`),
  ];
  const size = [
    item((w) => `width ${w.sum(tenths(wide))} over ${w.across('lh', 'rh')}`),
    item((w) => `height ${w.sum(tenths(high))} over base and top`),
  ];
  const between = (part: string, side: Side): Item =>
    item(
      (w) => `butt ${part} between ${w.across('lh', 'rh')}`,
      [(w) => `flush ${w.sides(side, 'rear', 'front')}`, ...across],
    );
  if (corner === 'top between sides') return [...base, ...size, between('top', 'top'), between('base', 'bottom')];
  if (corner === 'mitred top') {
    return [
      ...base,
      ...size,
      item(
        (w) => `mitre top between ${w.across('lh', 'rh')}`,
        [() => 'outer top', (w) => `flush ${w.sides('rear', 'front')}`],
      ),
      between('base', 'bottom'),
    ];
  }
  const stand = (part: string, side: Side): Item =>
    item(() => `butt ${part} between base and top`, [(w) => `flush ${w.sides(side, 'front', 'rear')}`, ...across]);
  return [...base, ...size, stand('lh', 'left'), stand('rh', 'right')];
}

function backItems({ back }: CaseRecipe): readonly Item[] {
  if (back.kind === 'none') return [];
  if (back.kind === 'butted') {
    return [
      parts('back', 'facing', 'board'),
      item(
        (w) => `butt back between ${w.across('lh', 'rh')}, base and top`,
        [() => 'rear flush with lh', () => 'reference rear'],
      ),
    ];
  }
  return [
    parts('back', 'facing', 'panel'),
    item(
      (w) => `groove back between ${w.across('lh', 'rh')}, base and top`,
      [
        (w) => `rear set back ${w.sum(tenths(back.setBack))} from lh`,
        (w) => `width ${w.sum(mm('6.2'))}`,
        (w) => `depth ${w.sum(mm(7))}`,
        (w) => `clearance ${w.len(mm('0.5'))}`,
      ],
    ),
  ];
}

/** What the rear of an inner part stands against. */
function rearFact({ back }: CaseRecipe): Fact {
  if (back.kind === 'grooved') return () => 'rear against back.groove.front';
  return () => (back.kind === 'butted' ? 'rear against back.front' : 'rear flush with lh');
}

const frontFact = ({ shelfBack }: CaseRecipe): Fact =>
  shelfBack === 0 ? () => 'front flush with lh' : (w) => `front set back ${w.sum(tenths(shelfBack))} from lh`;

function dividerItems(recipe: CaseRecipe): readonly Item[] {
  const { divider } = recipe;
  if (divider === 'none') return [];
  const place: Fact =
    divider === 'midway'
      ? (w) => `centred between ${w.across('lh', 'rh')}`
      : (w) => `${w.side('left')} ${w.sum(tenths(divider))} ${w.toward('right of')} lh.${w.side('right')}`;
  return [
    parts('divider', 'upright', 'board'),
    item(
      () => 'butt divider between base and top',
      [
        place,
        rearFact(recipe),
        () => 'front flush with lh',
        (w) => `reference ${w.side('left')}`,
        ...acrossFact(recipe),
      ],
    ),
  ];
}

function shelfItems(recipe: CaseRecipe): readonly Item[] {
  const { heights, openings, divider } = recipe;
  const items: Item[] = [];
  if (heights.length > 0) {
    items.push(parts(`shelf 1 to ${heights.length}`, 'level', 'board'));
    items.push(
      item(
        (w) => `butt shelf between ${w.across('lh', divider === 'none' ? 'rh' : 'divider')}`,
        [
          (w) => `bottom ${w.list(heights.map(tenths))} above base.bottom`,
          rearFact(recipe),
          frontFact(recipe),
          ...acrossFact(recipe),
        ],
      ),
    );
  }
  if (divider !== 'none' && openings > 0) {
    const step = recipe.openingStep ? ' to 0.5mm' : '';
    items.push(parts(`tray 1 to ${openings}`, 'level', 'board'));
    items.push(
      item(
        (w) => `butt tray between ${w.across('divider', 'rh')}`,
        [
          () => `openings equal${step} between base.top and top.bottom`,
          rearFact(recipe),
          frontFact(recipe),
          () => 'reference bottom',
        ],
      ),
    );
  }
  return items;
}

function extras(recipe: CaseRecipe): readonly Item[] {
  const { rail, kick, loose, bands, corner } = recipe;
  const items: Item[] = [];
  if (rail) {
    items.push(parts('rail', 'level', 'board'));
    items.push(item((w) => `depth ${w.sum(mm(90))} of rail`));
    items.push(
      item(
        (w) => `butt rail between ${w.across('lh', 'rh')}`,
        [(w) => `top ${w.sum(mm(40))} below top.bottom`, () => 'front flush with lh', () => 'datum front'],
      ),
    );
  }
  if (kick && corner !== 'sides between top and base') {
    items.push(parts('kick', 'facing', 'board'));
    items.push(
      item(() => 'notch lh, rh at front bottom', [(w) => `depth ${w.sum(mm(50))}`, (w) => `height ${w.sum(mm(60))}`]),
    );
    items.push(item((w) => `height ${w.sum(mm(60))} of kick`));
    items.push(
      item(
        (w) => `butt kick between ${w.across('lh', 'rh')}`,
        [(w) => `front set back ${w.sum(mm(50))} from lh`, () => 'bottom against base.top'],
      ),
    );
  }
  if (loose) {
    items.push(parts('loose', 'level', 'board'));
    items.push(
      item(
        (w) => `rest loose between ${w.across('lh', 'rh')}`,
        [
          (w) => `top ${w.sum(mm(150))} below top.bottom`,
          rearFact(recipe),
          (w) => `front set back ${w.sum(mm(5))} from lh`,
        ],
      ),
    );
  }
  if (bands !== 'none') items.push(item((w) => `band ${w.sides('front')} of lh, rh, top with edge`));
  if (bands === 'before' || bands === 'after') items.push(item(() => `milled ${bands} banding`));
  return items;
}
