import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { example, hoverIn, open } from './hover.fixture.js';

const periodicals = example('periodicals.joinery');

describe('a hover on a part', () => {
  it('has its sizes, and for each the facts that add up to it', async () => {
    const [declared, used] = await hoverIn(periodicals, 'part |shelf', 'butt |shelf');
    expect(declared).toBe(`**shelf**: one level part of \`birch18\` (18 mm, measured 17.7 mm)

Finished 564.6 × 538 × 17.7 mm (width × depth × height)

Cut 564.6 × 538 × 17.7 mm (along the grain × across × thickness); grain along its width

\`\`\`text
width    564.6
                butt shelf to lh.right
        − 17.7  lh is as thick as birch18 (measured)
         + 600  width wide over lh and rh
        − 17.7  rh is as thick as birch18 (measured)
                butt shelf to rh.left
depth     538
               shelf flush front with lh
        + 560  depth deep of lh
         − 16  back.rear set back 16 from lh.rear
          − 6  groove for back 6 wide
               shelf.rear against back.groove.front
height    17.7
        + 17.7  shelf is as thick as birch18 (measured)
\`\`\`

- left end, to lh for \`biscuit20\`: 48, 158, 248, 398, 478 from its rear edge
- right end, to rh for \`biscuit20\`: 48, 158, 248, 398, 478 from its rear edge`);
    expect(used).toBe(declared);
  });

  it('that has bands tells what is cut before they are glued on', async () => {
    const [top] = await hoverIn(example('bookcase.joinery'), 'part |top');
    expect(top).toContain('Cut 1164.6 × 299 × 17.7 mm');
    expect(top).toContain('before it is banded at front with `edge1` (1 mm)');
  });

  it('that stands for several tells how many, once if they are alike and each by itself if not', async () => {
    const text = example('bookcase.joinery');
    const [alike] = await hoverIn(text, 'parts |lshelf');
    expect(alike).toContain('**lshelf**: 3 level parts of `birch18` (18 mm, measured 17.7 mm), all alike');
    expect(alike).toContain('The same piece as rshelf 1, rshelf 2, rshelf 3');
    const edited = text.replace('width 1200 over', 'lshelf 2.front set back 20 from lshelf 1\n  width 1200 over');
    const [apart, second] = await hoverIn(
      edited.replace(/(butt lshelf[^}]*)flush front/, '$1'),
      'parts |lshelf',
      'lshelf |2.front',
    );
    expect(apart).toContain('| mm | width | depth | height | same piece as |');
    expect(apart).toMatch(/\| lshelf 1 \| 573\.45 \| not fixed \|/);
    expect(second).toContain('**lshelf 2**: one level part');
  });

  it('with an open side says so', async () => {
    const [shelf] = await hoverIn(periodicals.replace('    flush front\n', ''), 'part |shelf');
    expect(shelf).toContain('Finished 564.6 × not fixed × 17.7 mm');
    expect(shelf).toContain('depth  not fixed');
  });

  it('is in the units of its file', async () => {
    const [back] = await hoverIn(example('rail-base.joinery'), 'part |back');
    expect(back).toContain('Finished 29 1/4" × 7/32" × 30 1/8"');
    expect(back).toContain('+ 34 1/2  height 34 1/2 of lh');
  });
});

describe('a hover on a joint', () => {
  it('has a table of both halves', async () => {
    const [verb, head, brace] = await hoverIn(periodicals, '|butt shelf', 'shelf |between', 'lh and rh |{\n    bottom');
    expect(verb).toContain(`shelf / lh: 5 × \`biscuit20\` by \`deep5\` with \`joiner\`; the parts touch over 538 mm

| mm | shelf | lh |
| --- | --- | --- |
| mill into | left end | right face |
| slots | 48, 158, 248, 398, 478 | 70, 180, 270, 420, 500 |
| from its | rear edge | rear edge |
| across | 9.5 from its bottom face | 359.5 from its bottom end |
| depth | 12.3 | 12.3 |
| spacer | 22 = 12 + 10 | none |
| stop | – | 350 from its bottom end |
| fence | rear edge at the left fence | rear edge at the left fence |`);
    expect(verb).toContain('| fence | rear edge at the right fence | rear edge at the right fence |');
    expect(verb).toContain('`butt`: ');
    expect(head).toContain('| spacer | 22 = 12 + 10 | none |');
    expect(brace).toBe(head);
  });

  it('of like parts has one table for each host, with their figures in turn', async () => {
    const [shelves] = await hoverIn(example('bookcase.joinery'), '|butt lshelf');
    expect(shelves).toContain('lshelf 1, 2, 3 / divider: 3 × `biscuit20` by `book3`');
    expect(shelves).toContain('| stop | – | 272.3; 522.3; 772.3 from its bottom end |');
    expect(shelves?.match(/mill into/g)).toHaveLength(2);
  });

  it('tells the lines that got no slot, and why', async () => {
    const [mitre] = await hoverIn(example('display-plinth.joinery'), '|mitre top');
    expect(mitre).toMatch(/- no slot at (\d+, )*500 from zero: beyond where the parts touch/);
    expect(mitre).toContain('17.5 from the toe at its top face');
    const [left] = await hoverIn(periodicals.replace('flush front\n', 'flush front\n leave out 270\n'), '|butt shelf');
    expect(left).toContain('- no slot at 270 from zero: left out as written');
  });

  it('tells how a groove is cut', async () => {
    const [groove] = await hoverIn(periodicals, '|groove back');
    expect(groove).toContain('- groove in the right face of lh: 6 wide, 8 deep, 700.6 long, 16 from its rear edge');
  });

  it('without a jig has positions to mark out and nothing to set', async () => {
    const [butt] = await hoverIn(example('returns-bin.joinery'), '|butt lh');
    expect(butt).toContain('| slots | 30, 110, 190, 270 | 30, 110, 190, 270 |');
    expect(butt).not.toMatch(/stop|fence|spacer/);
  });

  it('that cannot be worked out says what is missing', async () => {
    const text = example('bookcase.joinery').replace('    reference left\n', '');
    const [butt] = await hoverIn(text, '|butt divider');
    expect(butt).toContain('say which face they are measured from');
    const [none] = await hoverIn(
      periodicals.replace('flush front\n', 'flush front\nconnect none "a | *pin*"\n'),
      '|butt shelf',
    );
    expect(none).toContain('- no connectors: a \\| \\*pin\\*');
  });

  it('tells two of one head apart', async () => {
    const twice = periodicals.replace(
      '\njob Library',
      '\ncabinet B {\n part a, b : upright of birch18\n part c, d : level of birch18\n}\njob Library',
    );
    const heads =
      'butt c between a and b { connect biscuit20 by lines 60 }\n butt c between a and b { connect none "two" }\n';
    const [one, two] = await hoverIn(
      twice.replace(' part c, d : level of birch18\n', ` part c, d : level of birch18\n ${heads}`),
      '|butt c',
      ' 60 }\n |butt c',
    );
    expect(one).toContain('**butt c between a and b**');
    expect(two).toContain('**butt c between a and b (2)**');
    expect(two).toContain('no connectors: two');
  });
});

describe('slot positions', () => {
  it('are those that come out of the lines, the groove and the cabinet’s depth by hand', async () => {
    const tenths = (from: number, to: number) => fc.integer({ min: from * 10, max: to * 10 }).map((n) => n / 10);
    const arbitrary = fc.record({
      deep: tenths(300, 600),
      back: tenths(8, 20),
      groove: tenths(6, 9),
      shy: tenths(0, 30),
      lines: fc.uniqueArray(tenths(60, 620), { minLength: 2, maxLength: 5 }),
    });
    await fc.assert(
      fc.asyncProperty(arbitrary, async ({ deep, back, groove, shy, lines }) => {
        const text = periodicals
          .replace('deep = 560', `deep = ${deep}`)
          .replace('rear set back 16 from lh', `rear set back ${back} from lh`)
          .replace('width 6', `width ${groove}`)
          .replace(/(butt shelf[^}]*)flush front/, `$1front set back ${shy} from lh`)
          .replace('bottom 350', `connect biscuit20 by lines ${lines.join(', ')}\n bottom 350`);
        const [joint] = await hoverIn(text, '|butt shelf');
        // The rear of the sides is zero; the shelf begins before the groove and ends so far behind the front.
        const begins = Math.round((back + groove) * 10);
        const ends = Math.round((deep - shy) * 10);
        const landing = lines.map((line) => Math.round(line * 10)).filter((line) => line >= begins && line <= ends);
        landing.sort((a, b) => a - b);
        const row = (from: number) => landing.map((line) => String((line - from) / 10)).join(', ') || 'none';
        if (landing.length > 0) expect(joint).toContain(`| slots | ${row(begins)} | ${row(0)} |`);
        else expect(joint).not.toMatch(/\| slots \| \d/);
        if (landing.length > 0) expect(joint).toMatch(new RegExp(`\\| spacer \\| ${begins / 10}[ :|]`));
      }),
      { numRuns: 25 },
    );
  });
});

describe('a hover on stock', () => {
  it('has the values and where they come from', async () => {
    const text = `units mm
import "shop.joinery"
connector c : loose tenon { along 22  across 40  thickness 8  slot 23  plunge 14 in face, 28 in edge  by mortiser  source "from memory" }
material m { thickness 18 plus 0.2 minus 0.6  sheet 2440 x 1220  grain along 1220  density 680 kg/m3 }
pattern p { first 30  last 40  pitch at most 150 }
pattern q { lines 70, 180  skip within 50 }
`;
    const [connector, material, spread, lines, machine] = await hoverIn(
      text,
      'connector |c',
      'material |m',
      'pattern |p',
      'pattern |q',
      'by |mortiser',
    );
    expect(connector).toContain('**c**: connector\n\n- kind loose tenon\n- along the run 22 mm');
    expect(connector).toContain('- plunge 14 mm in a face, 28 mm in an edge\n- machine `mortiser` (8 mm)');
    expect(connector).toContain('source: from memory');
    expect(material).toContain(
      '- thickness 18 mm plus 0.2 minus 0.6\n- measured not yet\n- sheet 2440 × 1220 mm\n- grain along 1220 mm',
    );
    expect(material).toContain('- density 680 kg/m³');
    expect(spread).toContain('- pitch at most 150 mm, all alike');
    expect(lines).toContain('- lines 70, 180 from zero\n- skip a line nearer than 50 mm');
    expect(machine).toContain('**mortiser**: machine\n\n- bit 8 mm across\n- base to centre 5 mm to 30 mm ± 0.1');
  });

  it('tells what connectors, bands and glue are sold in, and what is bought to spare', async () => {
    const text = `units mm
import "shop.joinery"
connector c : dowel { diameter 8  length 30  plunge 16  by mortiser  packs of 100, 1000 }
band b { thickness 1  oversize 20  rolls of 50 m, 150 ft  spare 2.5 % }
glue pva { spread 1/2 oz/ft2  packs of 750 g, 5 kg  spare 10 %  source "the can" }
`;
    const [connector, band, glue, spread] = await hoverIn(text, 'connector |c', 'band |b', 'glue |pva', '|spread 1/2');
    expect(connector).toContain('- packs of 100, 1000\n- spare 5 %, as the language has it');
    expect(band).toContain('- oversize 20 mm, to be trimmed\n- rolls of 50 m, 150 ft\n- spare 2.5 %');
    expect(glue).toContain('**pva**: glue\n\n- spread 152.6 g/m² of a glue line\n- packs of 750 g, 5 kg\n- spare 10 %');
    expect(glue).toContain('source: the can');
    expect(spread).toContain('How much glue goes on a glue line');
  });

  it('shows the jig, the pose, the limits and the bands of the shop', async () => {
    const [jig, pose, limits, band] = await hoverIn(
      example('shop.joinery'),
      'jig |longbed',
      '|pose',
      '|limits',
      'band |edge1',
    );
    expect(jig).toContain(
      '- stop 0 to 760 mm in steps of 0.5 mm\n- spacers 6, 10, 12, 19, 25, a stack up to 0.2 mm off',
    );
    expect(pose).toContain('- edge slots reference down');
    expect(limits).toContain('- skin under a slot 3 mm');
    expect(limits).toContain('as the language has it');
    expect(band).toContain('- thickness 1 mm');
  });
});

describe('a hover on a number', () => {
  it('has the other unit, with what rounding lost', async () => {
    const text =
      'units mm\ncabinet A {\n part a, b : upright of x\n parts c 1 to 3 : level of x\n width 600 over a and b\n depth 9/16 in of a\n height 2 * 350 mm of a\n height 3 1/8" of b\n}\njob J { 4 of A }\n';
    expect(await hoverIn(text, 'width |600', '|9/16', '|2 *', '|350', '|3 1/8', '1 to |3', '|4 of')).toEqual([
      '600 mm = **23 5/8"** to the nearest 1/64: −0.08 mm lost',
      '9/16 in = **14.2875 mm** exactly',
      '',
      '350 mm = **13 25/32"** to the nearest 1/64: −0.04 mm lost',
      '3 1/8" = **79.375 mm** exactly',
      '',
      expect.stringContaining('**4 of A**'),
    ]);
    expect(await hoverIn('units in\ncabinet A { width 23 1/4 over a and b }', '|23 1/4')).toEqual([
      '23 1/4 in = **590.55 mm** exactly',
    ]);
  });
});

describe('a hover on a name', () => {
  it('of a parameter has its value and where a job gives it another', async () => {
    const [declared, used, argument] = await hoverIn(periodicals, 'parameter |wide', 'width  |wide', '(|wide = 450');
    expect(declared).toContain('**wide** = 600 mm');
    expect(declared).toContain('- `450` in 2 of Periodicals(wide = 450, deep = 320), job Library');
    expect(used).toBe(declared);
    expect(argument).toBe(declared);
    const [high] = await hoverIn(periodicals, 'parameter |high');
    expect(high).toContain('No job gives it another value.');
  });

  it('of a cabinet has its outside and what is wanted of it', async () => {
    const [declared] = await hoverIn(periodicals, 'cabinet |Periodicals');
    expect(declared).toContain('**Periodicals**: cabinet 600 × 560 × 720 mm');
    expect(declared).toContain('6 parts, 10 joints, 60 slots to mill');
    expect(declared).toContain('- 4 of Periodicals(wide = 600), job Library');
  });

  it('in a line of a job has the cabinet as that line makes it', async () => {
    const [count, name] = await hoverIn(periodicals, '|2 of Periodicals(wide = 450', '2 of |Periodicals(wide = 450');
    expect(name).toBe(`**2 of Periodicals**: cabinet 450 × 320 × 720 mm (width × depth × height)

- wide 450 mm, given here
- high 720 mm
- deep 320 mm, given here

Each: 6 parts, 10 joints, 36 slots to mill`);
    expect(count).toBe(name);
  });

  it('of an import has what it brings', async () => {
    const text = 'import "shop.joinery"\nimport "dryfit:bands"\nimport "no/such.joinery"\n';
    const [shop, library, missing] = await hoverIn(text, '"|shop', '"|dryfit', '"|no');
    expect(shop).toContain('- material `birch18`, `ply6`, `ply34`, `ply14`, `bench36`\n- band `edge1`');
    expect(shop).toContain('\n- limits');
    expect(library).toContain('**dryfit:bands**: comes with the language\n\n- band ');
    expect(missing).toBe('**no/such.joinery** cannot be read');
  });

  it('of a pattern has which of its lines get a slot where it is used', async () => {
    const [general] = await hoverIn(periodicals, 'by |deep5');
    expect(general).toContain('**deep5**: pattern\n\n- lines 70, 180, 270, 420, 500 from zero');
    expect(general).toContain('shelf / lh; shelf / rh: slots at 70, 180, 270, 420, 500 from zero');
    const short = periodicals
      .replace('deep = 560', 'deep = 450')
      .replace('bottom 350', 'connect biscuit20 by deep5\n bottom 350');
    const [own] = await hoverIn(short, 'by |deep5\n bottom');
    expect(own?.match(/slots at/g)).toHaveLength(1);
    expect(own).toContain(
      '- shelf / lh; shelf / rh: slots at 70, 180, 270, 420 from zero; not at 500, beyond where the parts touch',
    );
  });

  it('of a side has where it lies and why', async () => {
    const [bottom, wall] = await hoverIn(periodicals, 'base.|bottom', 'groove.|front');
    expect(bottom).toContain('**base.bottom**: 0 mm from the bottom of the cabinet');
    expect(wall).toContain('`front`: ');
  });

  it('of a check tells what it finds', async () => {
    const [check] = await hoverIn(
      periodicals.replace('flush front\n', 'flush front\nallow slot-near-edge "so"\n'),
      'slot-|near',
    );
    expect(check).toContain('`slot-near-edge`: A slot ends nearer to an edge');
  });
});

describe('a place', () => {
  it('counts for the word that ends there, and white space for none', async () => {
    const at = await open(periodicals);
    const end = periodicals.indexOf('part shelf') + 'part shelf'.length;
    expect(at(end)?.markdown).toContain('**shelf**');
    expect(at(end + 2)).toBeUndefined();
    expect(at(periodicals.length + 99)).toBeUndefined();
  });

  it('of one of several covers its number', async () => {
    const text = example('bookcase.joinery').replace('width 1200', 'lshelf 2.front flush with lh\n  width 1200');
    const at = await open(text);
    const start = text.indexOf('lshelf 2.');
    expect(at(start + 1)).toMatchObject({ start, end: start + 'lshelf 2'.length });
  });
});

describe('markup', () => {
  it('in texts and names stays text', async () => {
    const text =
      'units mm\nconnector my_tenon_ : dowel { diameter 6  length 30  plunge 15  by d  source "a <b> [c](d) `e` $(f) | g_h_" }\nmachine d { drill 6  base to centre 9 }\n';
    const [connector] = await hoverIn(text, 'connector |my');
    expect(connector).toContain('**my\\_tenon\\_**');
    expect(connector).toContain('source: a \\<b\\> \\[c\\](d) \\`e\\` \\$(f) \\| g\\_h\\_');
  });
});

describe('a broken text', () => {
  it('has hovers wherever it can be read, and nothing is thrown', async () => {
    const texts = ['periodicals.joinery', 'bookcase.joinery', 'rail-base.joinery', 'shop.joinery'].map(example);
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...texts), fc.nat(), fc.nat(40), async (text, from, length) => {
        const start = from % text.length;
        const broken = text.slice(0, start) + text.slice(start + length);
        const at = await open(broken);
        const hovers = [...broken.matchAll(/\b\w/g)]
          .map(({ index }) => at(index))
          .filter((hover) => hover !== undefined);
        expect(hovers.length).toBeGreaterThan(0);
        for (const { markdown, start: begin, end } of hovers) {
          expect(markdown).not.toMatch(/undefined|NaN|\[object/);
          expect(begin).toBeLessThan(end);
        }
      }),
      { numRuns: 12 },
    );
  });
});
