import type { Shop } from '../spec/stock.js';
import { across, connectNone, fact, flush, flushWith } from '../testing/joint-items.js';
import { cabinet, type SpecBuilder } from '../testing/spec-builder.js';
import { type Length, mm } from '../testing/written.js';

export interface CornerUnit {
  readonly width?: Length;
  readonly depth?: Length;
  readonly cantWidth?: Length;
  readonly cantDepth?: Length;
}

/** A closed five-sided unit for a corner: base and top canted, two sides at the walls, two ends, and a turned front. */
export function cornerUnit(
  { width = 700, depth = 700, cantWidth = 300, cantDepth = 300 }: CornerUnit = {},
  shop?: Shop,
): SpecBuilder {
  const glued = connectNone('glued');
  return cabinet(shop)
    .part('base, top', 'level')
    .part('side, end', 'upright')
    .part('back, stub', 'facing')
    .on('base', 'front')
    .of('width', width, 'base, top')
    .of('depth', depth, 'base, top')
    .over('height', 600, 'base', 'top')
    .place('top', flushWith('left', 'base'))
    .place('top', flushWith('rear', 'base'))
    .cant('base, top', ['front', 'right'], { width: cantWidth, depth: cantDepth })
    .connect('biscuit20', { kind: 'spread', first: mm(80), last: mm(80), most: mm(150) })
    .joint('butt', 'side', 'between base and top', flush('left', 'front', 'rear'))
    .joint('butt', 'back', 'between base and top', flush('right', 'rear'))
    .joint('butt', 'stub', 'between base and top', flush('front'))
    .joint('butt', 'end', 'between base and top', flush('right'))
    .joint('butt', 'front', 'between base and top')
    .joint('mitre', 'front', 'between stub.front and end.right', across(12))
    .joint('butt', 'back', 'to side.right', fact(flushWith('rear', 'side')), glued)
    .joint('butt', 'stub', 'to side.right', fact(flushWith('front', 'side')), glued)
    .joint('butt', 'end', 'to back.front', glued);
}
