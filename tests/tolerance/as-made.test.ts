import { contributions, contributorsIn, type FitResult, figuresOf, reckon, render, resultsOf } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { fitText } from '../support/read.js';

interface Wishes {
  readonly stock?: string;
  readonly facts?: string;
  readonly more?: string;
  readonly connect?: string;
  readonly tolerances?: string;
  readonly jig?: string;
  readonly pose?: string;
}

/** Two sides with top and base, and a shelf whose facts are given. */
const text = (wishes: Wishes): string => `units mm
material board { thickness 18 }
machine joiner { cutter 100  kerf 4  base to centre 9 ± 0.1 }
machine mortiser { bit 8  base to centre 5 to 30 ± 0.1 }
connector plate : biscuit { along 47  across 15  thickness 4  plunge 8  by joiner }
connector tenon : loose tenon { along 22  across 40  thickness 8  slot 23  plunge 12 in face, 28 in edge  by mortiser }
${wishes.stock ?? ''}
${wishes.jig ?? ''}
${wishes.pose ?? ''}
tolerances { ${wishes.tolerances ?? ''} }
cabinet Case {
  part lh, rh    : upright of board
  part top, base : level of board
  part shelf     : level of board
  width 600 over lh and rh
  depth 300 of lh, rh
  height 700 of lh, rh
  connect ${wishes.connect ?? 'plate by lines 80, 220'}
  ${wishes.more ?? ''}
  butt top between lh and rh { flush top, front, rear }
  butt base between lh and rh { flush bottom, front, rear }
  butt shelf between lh and rh {
    ${wishes.facts ?? 'bottom 300 above lh.bottom  flush front, rear'}
  }
}
`;

async function resultOf(wishes: Wishes, id: string) {
  const { spec } = await fitText(text(wishes));
  const result = resultsOf(reckon(spec)).find((one) => one.id === id);
  if (!result || !('stack' in result.adds)) throw new Error(`no ${id}`);
  const words = result.adds.stack.terms.map(
    ({ of, coefficient }) => `${coefficient} ${render(of.words, { units: 'mm' })}`,
  );
  return { worst: figuresOf(result.adds).worst, from: words.sort(), ranked: contributions(result.adds.stack) };
}

const JIG = 'jig bed { bed 900  fences left, right  stop 0 to 760  spacers 6, 10, 12 within 0.2 }';

describe('a base', () => {
  test('that is fixed drops out, and one that is set comes in for each half', async () => {
    expect((await resultOf({}, 'shelf / lh place bottom')).from).toEqual([]);
    expect((await resultOf({ connect: 'tenon by lines 80, 220' }, 'shelf / lh place bottom')).from).toEqual([
      '-1 base of mortiser as set for shelf (shelf / lh)',
      '1 base of mortiser as set for lh (shelf / lh)',
    ]);
  });
});

describe('a fence', () => {
  test('drops out where both halves lie at it, and comes in with the other where they do not', async () => {
    const wishes = { jig: JIG, tolerances: 'fence ± 0.1' };
    expect((await resultOf(wishes, 'shelf / lh flush rear')).from).toEqual([]);
    const other = { ...wishes, pose: 'pose { edge slots reference down  face slots reference down }' };
    const { from } = await resultOf(other, 'shelf / lh flush rear');
    expect(from.map((words) => words.replace(/^-?1 /, '')).sort()).toEqual(['left fence', 'right fence']);
  });
});

describe('a stop', () => {
  test('comes into the place of a shelf; a tolerance written for the place stands instead of it', async () => {
    const wishes = { jig: JIG, tolerances: 'stop ± 0.1' };
    expect((await resultOf(wishes, 'shelf / lh place bottom')).from).toEqual(['1 stop for lh (shelf / lh)']);
    const facts = 'bottom 300 ± 0.4 above lh.bottom  flush front, rear';
    const { from, worst } = await resultOf({ ...wishes, facts }, 'shelf / lh place bottom');
    expect(from).toEqual(['1 300 ± 0.4, shelf / lh']);
    expect(`${worst.most}`).toBe('2/5');
  });

  test('is a line read by eye where the shop has none', async () => {
    const { from } = await resultOf({ tolerances: 'line ± 0.2' }, 'shelf / lh place bottom');
    expect(from).toEqual(['1 line read by eye across lh (shelf / lh)']);
  });
});

describe('spacers', () => {
  const facts = 'bottom 300 above lh.bottom  rear set back 22 from lh  flush front';
  test('come in for each piece, or for the block', async () => {
    const wishes = { jig: JIG, tolerances: 'spacer ± 0.05', facts };
    expect((await resultOf(wishes, 'shelf / lh flush front')).from).toEqual(['1 spacer 10', '1 spacer 12']);
    const cut = await resultOf({ ...wishes, facts: `${facts}  spacer cut` }, 'shelf / lh flush front');
    expect(cut.from).toEqual(['1 block of 22 for shelf (shelf / lh)']);
  });

  test('that do not quite make up the setback put the part off for certain', async () => {
    const near = 'bottom 300 above lh.bottom  rear set back 21.9 from lh  flush front';
    const { worst } = await resultOf({ jig: JIG, facts: near }, 'shelf / lh flush front');
    // The stack of 22 is 0.1 too wide: the shelf's slots come 0.1 nearer to its rear edge, and the shelf stands 0.1
    // further to the front.
    expect(`${worst.least} ${worst.most}`).toBe('1/10 1/10');
  });
});

describe('a size', () => {
  test('is off as the saw is, or as its own tolerance says', async () => {
    const saw = await resultOf({ tolerances: 'saw ± 0.2' }, 'shelf / lh flush front');
    expect(saw.from).toEqual(['-1 saw, depth of lh', '1 saw, depth of shelf']);
    const { spec } = await fitText(
      text({ tolerances: 'saw ± 0.2' }).replace('depth 300 of lh', 'depth 300 ± 0.5 of lh'),
    );
    const outside = reckon(spec).outside.find(({ axis }) => axis === 'y');
    expect(outside && contributorsIn(outside.adds).map((of) => `${of.origin} ${of.plus}`)).toEqual(['written 1/2']);
  });

  test('has its bands in it, and an edge that is banded after it is milled has its band', async () => {
    const banded = { stock: 'band edge1 { thickness 1 ± 0.1 }', more: 'band rear of shelf with edge1' };
    const origins = async (wishes: Wishes, id: string) =>
      (await resultOf(wishes, id)).ranked.map(({ of, coefficient }) => `${coefficient} ${of.origin}`);
    expect(await origins(banded, 'shelf / lh flush front')).toEqual(['1 band']);
    const before = { ...banded, more: 'band rear of shelf with edge1  milled before banding' };
    expect(await origins(before, 'shelf / lh flush rear')).toEqual(['1 band']);
    expect(await origins(before, 'shelf / lh flush front')).toEqual([]);
  });

  test('of sheets glued up has each layer in it', async () => {
    const text36 = text({}).replace(
      'material board { thickness 18 }',
      'material ply { thickness 9 ± 0.2 }\nmaterial board { layers ply, ply }',
    );
    const { spec } = await fitText(text36);
    const outside = reckon(spec).outside.find(({ axis }) => axis === 'x');
    expect(outside && contributorsIn(outside.adds).map((of) => render(of.words, { units: 'mm' }))).toEqual([
      'thickness of lh (ply, layer 1)',
      'thickness of lh (ply, layer 2)',
      'thickness of rh (ply, layer 1)',
      'thickness of rh (ply, layer 2)',
    ]);
  });
});

describe('an opening of a joint', () => {
  test('is what the others between the same hosts are longer than the part, and the end out of square', async () => {
    const { from, worst } = await resultOf({ tolerances: 'saw ± 0.2  square 1 over 1000' }, 'shelf / lh gap left');
    expect(from).toEqual(['-1 saw, width of shelf', '1 saw, width of base', '3/10 left end of shelf out of square']);
    expect(`${worst.most}`).toBe('7/10');
  });
});

describe('housings and rebates', () => {
  test('are as far off as they are cut, and parts that are laid by eye as far as that', async () => {
    const housed = text({ tolerances: 'cuts ± 0.1  line ± 0.3' })
      .replace('butt shelf between', 'house shelf between')
      .replace('bottom 300', 'depth 6  bottom 300');
    const { spec } = await fitText(housed);
    const results = resultsOf(reckon(spec));
    const opening = results.find(({ id }) => id === 'opening base.top to shelf.bottom');
    const front = results.find(({ id }) => id === 'shelf / lh flush front');
    const words = (one: typeof front) =>
      one && 'stack' in one.adds ? one.adds.stack.terms.map(({ of }) => render(of.words, { units: 'mm' })) : [];
    expect(words(opening)).toContain('place of the housing in lh for shelf');
    expect(words(front)).toContain('shelf put in its place on lh by eye');
  });
});

const codesOf = ({ findings }: FitResult): readonly string[] =>
  findings
    .map(({ code }) => code)
    .filter((code) => ['step-at-joint', 'edges-not-flush', 'gap-at-joint'].includes(code));

describe('a mitre', () => {
  const mitred = (tolerances: string, reference = 'outer', thickness = '18 ± 0.3') => `units mm
material board { thickness ${thickness} }
machine joiner { cutter 100  kerf 4  base to centre 9 }
connector plate : biscuit { along 47  across 15  thickness 4  plunge 8  by joiner }
limits { skin under slot 0  wall beside slot 0 }
tolerances { ${tolerances} }
cabinet Case {
  part lh, rh    : upright of board
  part top, base : level of board
  width 600 over lh and rh
  height 400 over base and top
  depth 300 of lh, rh, top, base
  connect plate by lines 80, 220
  butt base between lh and rh { flush bottom, front, rear }
  mitre top between lh and rh {
    outer top
    flush front, rear
    reference ${reference}
    at 12 from reference
  }
}
`;

  test('opens as its bevels are off', async () => {
    // √2 · 25.456 · π / 180 is 0.628 for each degree, by root sum square.
    expect(codesOf(await fitText(mitred('mitre ± 0.79 degrees', 'outer', '18')))).toEqual([]);
    expect(codesOf(await fitText(mitred('mitre ± 0.8 degrees', 'outer', '18')))).toEqual(['gap-at-joint']);
    // 25.46 · sin(2 · 0.57°) is a little over 0.5, all at once.
    expect(codesOf(await fitText(mitred('mitre ± 0.57 degrees  reckon worst case', 'outer', '18')))).toEqual([
      'gap-at-joint',
    ]);
    expect(codesOf(await fitText(mitred('mitre ± 0.55 degrees  reckon worst case', 'outer', '18')))).toEqual([]);
  });

  test('misses its toes by the sheets where the slots are measured from the heel', async () => {
    const gap = /gap-at-joint/;
    expect(codesOf(await fitText(mitred('', 'outer'))).filter((code) => !gap.test(code))).toEqual([]);
    expect(codesOf(await fitText(mitred('', 'inner'))).filter((code) => !gap.test(code))).toEqual(['step-at-joint']);
  });
});
