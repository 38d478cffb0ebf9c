import { describe, expect, it } from 'vitest';
import { foundBy } from '../testing/found.js';
import { at, cut, fact, flush, setBack } from '../testing/joint-items.js';
import { jig, lines, material, shop } from '../testing/shop-builder.js';
import { cabinet, sides } from '../testing/spec-builder.js';
import { mm } from '../testing/written.js';
import { grainAcross } from './grain-across.js';
import { neverMeasured } from './never-measured.js';
import { sheetTooShort } from './sheet-too-short.js';
import { tooBigForJig } from './too-big-for-jig.js';

const shelfOf = (name: string, house: ReturnType<typeof shop>, length = 600) =>
  cabinet(house)
    .part('lh, rh', 'upright')
    .part('shelf', 'level', name)
    .over('width', length, 'lh', 'rh')
    .of('height', 700, 'lh, rh')
    .of('depth', 320, 'lh, rh')
    .place('rh', at('bottom', 0, 'above', 'lh.bottom'))
    .place('rh', at('rear', 0, 'behind', 'lh.rear'))
    .connect('biscuit20', lines(70, 160, 250))
    .joint('butt', 'shelf', 'between lh and rh', flush('rear', 'front'), fact(at('bottom', 100, 'above', 'lh.bottom')));

describe('a piece and its sheet', () => {
  const narrow = { sheet: { length: mm(1000), width: mm(2000) } };

  it('may lie either way on a sheet without a grain', () => {
    const plain = shop({ materials: [material('mdf', 18, { ...narrow, grain: undefined })] });
    const grained = shop({ materials: [material('mdf', 18, narrow)] });
    expect(foundBy(sheetTooShort, shelfOf('mdf', plain, 1500).build())).toEqual([]);
    expect(foundBy(sheetTooShort, shelfOf('mdf', grained, 1500).build())).toHaveLength(1);
  });

  it('lies with its grain along the side of the sheet that the grain runs along', () => {
    const across = shop({ materials: [material('oak', 18, { ...narrow, grain: 'width' })] });
    expect(foundBy(sheetTooShort, shelfOf('oak', across, 1500).build())).toEqual([]);
  });

  it('is anything where no sheet is given', () => {
    const none = shop({ materials: [material('offcuts', 18, { sheet: undefined })] });
    expect(foundBy(sheetTooShort, shelfOf('offcuts', none, 9000).build())).toEqual([]);
  });
});

describe('grain across a span', () => {
  it('is nothing in a sheet without a grain, nor where the part is held along its grain as well', () => {
    const plain = shop({ materials: [material('mdf', 18, { grain: undefined })] });
    const crossed = (house: ReturnType<typeof shop>, name: string) =>
      sides(house)
        .part('shelf', 'level', name, 'depth')
        .joint('butt', 'shelf', 'between lh and rh', fact(at('bottom', 100, 'above', 'lh.bottom')), flush('front'))
        .of('depth', 300, 'shelf')
        .build();
    expect(foundBy(grainAcross, crossed(plain, 'mdf'))).toEqual([]);
    expect(foundBy(grainAcross, crossed(shop(), 'birch18'))).toHaveLength(1);

    const tray = sides()
      .part('front, back', 'facing')
      .part('tray', 'level', 'ply6', 'depth')
      .of('height', 100, 'front, back')
      .joint('butt', 'front', 'between lh and rh', flush('bottom', 'front'))
      .joint('butt', 'back', 'between lh and rh', flush('bottom', 'rear'))
      .joint(
        'groove',
        'tray',
        'between lh and rh, front and back',
        fact(setBack('bottom', 12, 'lh')),
        cut({ width: 6, depth: 8 }),
      )
      .build();
    expect(foundBy(grainAcross, tray)).toEqual([]);
  });
});

describe('a sheet that was never measured', () => {
  const house = shop({ materials: [material('oak18', 18)] });

  it('is told where a size rests on it, not where only its own thickness does', () => {
    expect(foundBy(neverMeasured, shelfOf('oak18', house).build())).toEqual([]);
    const sidesOf = cabinet(house)
      .part('lh, rh', 'upright', 'oak18')
      .part('shelf', 'level')
      .over('width', 600, 'lh', 'rh')
      .joint('butt', 'shelf', 'between lh and rh');
    expect(foundBy(neverMeasured, sidesOf.build())).toHaveLength(1);
    expect(foundBy(neverMeasured, sidesOf.nominal().build())).toEqual([]);
  });
});

describe('a part on the bed of the jig', () => {
  const bench = (bed: number) => shop({ jig: jig({ bed: mm(bed) }), bands: { thick: 3 } });

  it('is as long as it is when it is milled, before its bands or after', () => {
    const banded = (bed: number) => shelfOf('birch18', bench(bed)).band(['front', 'rear'], 'lh, rh, shelf', 'thick');
    expect(foundBy(tooBigForJig, banded(314).milled('before banding').build())).toEqual([]);
    expect(foundBy(tooBigForJig, banded(319).milled('after banding').build())).toHaveLength(1);
  });

  it('has its spacer beside it', () => {
    const setback = (bed: number) =>
      sides(bench(bed))
        .part('shelf', 'level')
        .connect('biscuit20', lines(180, 270, 420))
        .joint(
          'butt',
          'shelf',
          'between lh and rh',
          fact(setBack('rear', 22, 'lh')),
          fact(at('front', 40, 'in front of', 'lh.front')),
          fact(at('bottom', 100, 'above', 'lh.bottom')),
        )
        .build();
    expect(foundBy(tooBigForJig, setback(600))).toEqual([]);
    expect(foundBy(tooBigForJig, setback(599)).map(({ about }) => about.parts)).toEqual([['shelf']]);
  });
});
