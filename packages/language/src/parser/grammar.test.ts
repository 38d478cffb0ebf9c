import { EmptyFileSystem } from 'langium';
import { describe, expect, test } from 'vitest';
import type { File } from '../generated/ast.js';
import { createJoineryServices } from '../module.js';

const { LangiumParser } = createJoineryServices(EmptyFileSystem).joinery.parser;

const parse = (text: string) => LangiumParser.parse<File>(text);
const errors = (text: string) => {
  const { lexerErrors, parserErrors } = parse(text);
  return [...lexerErrors, ...parserErrors].map(({ message }) => message);
};
const inCabinet = (...lines: string[]) => `cabinet Desk {\n${lines.join('\n')}\n}\n`;

describe('every statement is read', () => {
  test.each([
    ['units mm'],
    ['units in'],
    ['import "shop.joinery"'],
    ['job Library { 4 of Desk(wide = 600)\n2 of Desk }'],
    ['job Library { late back, kick 2 of Desk\n2 of Desk  mill lh of Desk before late, mill of Desk }'],
    ['material m { thickness 18 plus 0.7 minus 0.9  measured 17.7 +/- 0.2 }'],
    ['material m { thickness 3/4"  sheet 96" x 48"  grain along 96"  stiffness 8.5 GPa  density 680 kg/m3 }'],
    ['material m { layers a, b, c  oversize 10  source "measured" }'],
    ['band edge { thickness 0.4 }'],
    ['machine m { cutter 100  kerf 4  base to centre 9.5 ± 0.1  body 140 }'],
    ['machine m { bit 8  base to centre 5 to 30 ± 0.1 }'],
    ['machine m { drill 8  base to centre 9 }'],
    ['connector c : biscuit { along 56  across 23  thickness 4  plunge 12.3  by joiner }'],
    ['connector c : loose tenon { along 22  across 40  thickness 8  slot 23  plunge 14 in face, 28 in edge  by m }'],
    ['connector c : dowel { diameter 8  length 30  plunge 11 in face, 21 in edge  clearance 1  by drill8 }'],
    ['connector c : dowel { diameter 8  length 30  plunge 11  by drill8  packs of 100, 1000  spare 5 % }'],
    ['band b { thickness 1  oversize 20  rolls of 50 m, 100 ft  spare 2.5 % }'],
    ['glue pva { spread 150 g/m2  packs of 750 g, 5 kg, 8 oz, 1 lb  spare 10 % }'],
    ['glue oz { spread 1/2 oz/ft2 }'],
    ['pattern p { lines 70, 180, 270  skip within 50 }'],
    ['pattern p { first 3"  last 2 1/4"  pitch at most 7" }'],
    ['pattern p { first 1 in  last 1 in  pitch 2 in }'],
    ['jig j { bed 900  reach 880  fences left, right  stop 0 to 760 step 0.5  spacers 6, 10 within 0.2  hold beam }'],
    ['pose { edge slots reference down  face slots reference up }'],
    ['pose { edge slots reference down or up  face slots reference up or down }'],
    ['limits { slot to edge along the run 10  wall beside slot 4  skin under slot 3  step 0.3  alike 3 }'],
    [inCabinet('parameter wide = 600', 'parameter shelves : count = 3')],
    [inCabinet('part lh, rh : upright of birch18', 'parts shelf 1 to 3 : level of birch18 grain depth')],
    [inCabinet('width wide over lh and rh', 'depth (wide - 2 * 40) / 3 of lh, rh', 'height 34 1/2 of lh')],
    [inCabinet('width 500 between lh and rh', 'height 100 from base.top to shelf 2.bottom')],
    [inCabinet('width 600 ± 0.5 over lh and rh { allow part-not-fixed "sketch" }')],
    [inCabinet('notch lh, rh at front bottom { depth 3  height 4 }')],
    [inCabinet('band front, rear of lh, shelf 2 with edge1', 'milled before banding')],
    [inCabinet('connect biscuit20 by deep5', 'datum front')],
    [inCabinet('butt top between lh and rh { flush top, rear, front }')],
    [inCabinet('butt rail between stileL.right and stileR.left { flush top  datum bottom }')],
    [inCabinet('mitre top between lh and rh { outer top  at 18.7 from reference  flush rear, front }')],
    [
      inCabinet(
        'groove back between lh and rh, base and top { rear set back 16 from lh  width 6  depth 8  stopped 8 }',
      ),
    ],
    [inCabinet('groove back to base.top { depth 3/8  clearance 1/32 }')],
    [
      inCabinet(
        'rebate back to lh.rear { lap 9 }',
        'house shelf between lh and rh { depth 6 }',
        'rest loose to base.top',
      ),
    ],
    [inCabinet('butt shelf between lh and rh { openings equal to 0.5 between base.top and top.bottom }')],
    [inCabinet('butt shelf between lh and rh { bottom 290, 540, 790 above base.bottom }')],
    [inCabinet('butt d between base and top { centred between lh and rh  centred in thickness  reference left }')],
    [
      inCabinet(
        'butt d between a and b { front 4 in front of lh.front  left 2 left of rh.left  right 1 right of a.left }',
      ),
    ],
    [inCabinet('butt d between a and b { front 4 in in front of lh.front  rear 3 behind lh.rear  top 1 below b.top }')],
    [inCabinet('butt d between a and b { datum lh.rear  reference inner  spacer cut  leave out 60, 80 }')],
    [inCabinet('butt d between a and b { connect none "glued"  front proud 2 of lh  rear against back.groove.front }')],
    [
      inCabinet(
        'butt d between a and b { connect c by lines 30, wide - 30 skip within 20  front against lh.notch.front }',
      ),
    ],
    [inCabinet('butt d between a and b { connect c by first 30 last 30 pitch at most 150 }')],
    [
      inCabinet(
        'lh.rear flush with rh',
        'divider centred between lh and rh',
        'shelf openings equal between a.top and b.bottom',
      ),
    ],
    ['// a line\n/* a\nblock */ units mm // more'],
  ])('%s', (text) => {
    expect(errors(text)).toEqual([]);
  });
});

describe('every word may be a name', () => {
  const words = Object.keys(createJoineryServices(EmptyFileSystem).joinery.parser.Lexer.definition).filter((word) =>
    /^[A-Za-z]+$/.test(word),
  );

  test.each(words)('%s', (word) => {
    const text = [
      `material ${word} { thickness 18 }`,
      `pattern ${word} { lines 70 }`,
      `connector ${word} : biscuit { by ${word} }`,
      `cabinet ${word} {`,
      `  parameter ${word} = 600`,
      `  part ${word}, other : upright of ${word}`,
      `  width ${word} over ${word} and other`,
      `  depth 2 * ${word} of other, ${word}`,
      `  butt ${word} between other and ${word} { flush front  connect ${word} by ${word} }`,
      `  ${word}.left flush with other`,
      '}',
      `job ${word} { 2 of ${word}(${word} = 450) }`,
    ].join('\n');
    expect(errors(text)).toEqual([]);
  });
});

describe('units', () => {
  const length = (line: string) => {
    const [cabinet] = parse(inCabinet(line)).value.entries;
    const [item] = cabinet?.$type === 'Cabinet' ? cabinet.items : [];
    const fact = item?.$type === 'Joint' ? item.facts[0] : undefined;
    return fact?.$type === 'SideFact' && fact.by[0]?.value.$type === 'Literal' ? fact.by[0].value.text : undefined;
  };

  test('`in` behind a number is its unit, unless "in front of" begins there', () => {
    expect(length('butt d to a.top { front 4 in front of lh.front }')).toBe('4');
    expect(length('butt d to a.top { front 4 in in front of lh.front }')).toBe('4 in');
    expect(length('butt d to a.top { top 4 in above lh.top }')).toBe('4 in');
  });
});

describe('what is missing is said in the trade’s words', () => {
  test.each([
    [inCabinet('butt shelf lh and rh'), 'expected `between` or `to` after the part that enters, found `lh`'],
    [
      inCabinet('butt between lh and rh'),
      'expected `between` or `to` after the part that enters, found `lh` (`between` before it was read as a name)',
    ],
    [inCabinet('width 600 lh and rh'), 'expected `of`, `over`, `between` or `from` after the length, found `lh`'],
    [inCabinet('part lh : of birch18'), 'expected `upright`, `level` or `facing` after `:`, found `of`'],
    [
      inCabinet('butt a to b.top { rear lh }'),
      'expected `above`, `below`, `behind`, `in front of`, `left of` or `right of` after the distance, found `}`',
    ],
    [
      inCabinet('butt a to b.top { flush }'),
      'expected a side (`left`, `right`, `front`, `rear`, `bottom` or `top`) after `flush`, found `}`',
    ],
    [inCabinet('butt a to b.top { connect none }'), 'expected the reason in quotes, such as "glued" after `none`'],
    ['job Library { late back }', 'expected `of` after `back`, found `}`'],
    ['job Library { mill lh of Desk }', 'expected `before` after `Desk`, found `}`'],
    [
      'job Library { of Desk }',
      '`of` is no line of a job; one begins with how many are made, as in `2 of Bookcase`, or with `late` or `mill`',
    ],
    [
      'cabinet Desk { part shelf a, shelf b : level of birch18 }',
      'a name is one word, and `a` is one too many; parts that are alike are written as `parts shelf 1 to 3`',
    ],
    ['cabinet Desk { parts shelf 1 too 3 : level of birch18 }', 'expected `to` after `1`, found `too`'],
    ['pattern p { lines 75 200, 325 }', 'a comma is missing between `75` and `200`'],
    ['jig j { bed 900 spacers 6, 10 12 }', 'a comma is missing between `10` and `12`'],
    [
      'cabinet Desk { parameter high = 70 cm parameter wide = 30 }',
      '`cm` is no unit here: lengths are in mm or in, as in `70mm` and `2 3/4"`',
    ],
    ['material m { sheet 2440 x1220 }', '`x1220` reads as a name: write `x 1220`'],
    [
      'machine m { wheel 100 }',
      '`wheel` is no setting of a machine, which takes `cutter`, `bit`, `drill`, `kerf`, `base`, `body` or `source`',
    ],
    ['pose { edge slots reference left }', 'expected `down` or `up` after `reference`, found `left`'],
    ['import shop', 'expected a path in quotes, such as "shop.joinery" after `import`, found `shop`'],
    [inCabinet('parameter wide = '), 'expected a length after `=`, found `}`'],
    [
      "cabinet Desk { // 4'\n part l : level of m' }",
      '`\'` is not part of the language: feet are not read; write inches as 3/4" or 23 1/4 in, and texts in double quotes',
    ],
  ])('%s', (text, message) => {
    expect(errors(text)).toContain(message);
  });
});

describe('a lost brace costs its own statement only', () => {
  const lines = (text: string) => {
    const [cabinet] = parse(text).value.entries;
    return cabinet?.$type === 'Cabinet' ? cabinet.items.map(({ $type }) => $type) : [];
  };
  const whole = inCabinet(
    '  part lh : upright of m',
    '  butt a to b.top {',
    '    flush front',
    '  }',
    '  butt c to b.top { flush front }',
    '  height 300 of lh',
  );
  const read = ['PartLine', 'Joint', 'Joint', 'DimensionLine'];

  test('the text as it is', () => {
    expect(lines(whole)).toEqual(read);
  });

  test.each([...whole.matchAll(/[{}]/g)].map(({ index }) => index))('without the brace at %i', (index) => {
    const text = `${whole.slice(0, index)} ${whole.slice(index + 1)}`;
    expect(lines(text)).toEqual(read);
    expect(errors(text)).toHaveLength(1);
  });
});
