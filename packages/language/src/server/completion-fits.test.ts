import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { completing, examples, labels, words } from './completion.fixture.js';

const example = (name: string) => readFileSync(new URL(name, examples), 'utf8');
const periodicals = example('periodicals.joinery');
const bookcase = example('bookcase.joinery');
const railBase = example('rail-base.joinery');

/** What is offered at `|` where it replaces a line of an example that was whole before. */
async function offeredFor(text: string, line: string, typed: string) {
  expect(text).toContain(line);
  const { at } = await completing();
  return at(text.replace(line, typed), text);
}

const shelf = (typed: string) => offeredFor(periodicals, 'bottom 350 above base.bottom', typed);

describe('sides', () => {
  it('of flush lie off the joint’s axis and have not been placed yet', async () => {
    expect(words(await shelf('flush |'))).toEqual(['bottom', 'top']);
    expect(words(await offeredFor(periodicals, 'flush bottom, rear, front', 'flush bottom, |'))).toEqual([
      'front',
      'rear',
    ]);
  });

  it('of a datum lie across the run, those of a reference are the faces of the part whose edge is milled', async () => {
    expect(words(await shelf('datum |')).slice(0, 2)).toEqual(['front', 'rear']);
    expect(words(await shelf('datum lh.|'))).toEqual(['front', 'rear']);
    expect(words(await shelf('reference |'))).toEqual(['bottom', 'top']);
    expect(words(await offeredFor(railBase, 'datum top', 'datum |')).slice(0, 2)).toEqual(['bottom', 'top']);
    const mitre = example('display-plinth.joinery');
    const line = /mitre top .*\{\n/.exec(mitre)?.[0] ?? '';
    expect(words(await offeredFor(mitre, line, `${line}reference |\n`))).toEqual(['outer', 'inner']);
  });

  it('of a plane are those that the fact can be about', async () => {
    expect(words(await shelf('rear against back.|'))).toEqual(['front', 'groove']);
    expect(words(await shelf('rear against lh.|'))).toEqual(['front']);
    expect(words(await shelf('rear against back.groove.|'))).toEqual(['front']);
    expect(words(await shelf('rear flush with lh.|'))).toEqual(['rear']);
    expect(words(await shelf('bottom 350 above base.|'))).toEqual(['bottom', 'top']);
    expect(words(await offeredFor(railBase, 'depth 4 of frontrail', 'depth 4 from lh.|'))).toEqual([
      'front',
      'rear',
      'notch',
    ]);
    expect(words(await offeredFor(railBase, 'depth 4 of frontrail', 'depth 4 from lh.notch.|'))).toEqual(['front']);
    expect(words(await offeredFor(railBase, 'depth 4 of frontrail', 'depth 4 from base.|'))).toEqual(['front', 'rear']);
  });

  it('of a notch meet in a corner, and its sizes run in from both', async () => {
    const notch = 'notch lh, rh at front bottom { depth 3  height 4 }';
    const second = await offeredFor(railBase, notch, 'notch lh, rh at front |');
    expect(words(second)).toEqual(['bottom', 'top', 'left', 'right']);
    expect(second.at(-1)?.detail).toBe('a face of lh');
    expect(words(await offeredFor(railBase, notch, 'notch lh at front bottom { | }'))).toEqual([
      'depth',
      'height',
      'allow',
    ]);
    expect(words(await offeredFor(railBase, notch, 'notch lh at front bottom { depth 3\n | }'))).not.toContain('depth');
  });

  it('that a part is moved in are those its side can be moved in', async () => {
    expect(words(await shelf('bottom 350 |'))).toEqual(['above', 'below', 'plus']);
    expect(words(await shelf('rear 350 |'))).toEqual(['behind', 'in', 'plus']);
    expect(words(await shelf('rear 350 in |'))).toContain('front');
  });
});

describe('parts', () => {
  it('that stand as opposites come in pairs, each once in a statement', async () => {
    const typed = (words: string) => offeredFor(periodicals, '  butt shelf', `  ${words}\n  butt shelf`);
    expect(words(await typed('butt shelf between |')).slice(0, 2)).toEqual(['lh', 'rh']);
    expect(words(await typed('butt shelf between lh and |'))).toEqual(['rh']);
    expect(words(await typed('groove back between lh and rh, base and |'))).toEqual(['top', 'shelf']);
    const low = await typed('butt shelf between |');
    expect(low.find(({ label }) => label === 'top')?.detail).toBe('stands as shelf does: name the side that is met');
  });

  it('that no joint holds yet are the first to enter one', async () => {
    const text = periodicals.replace(/\n {2}butt shelf[^}]*}/, '\n  butt |');
    const { at } = await completing();
    expect(words(await at(text, text.replace('butt |', '')))[0]).toBe('shelf');
  });

  it('of which one is meant are offered by number', async () => {
    const items = await offeredFor(bookcase, '  width 1200', '  divider.front flush with |\n  width 1200');
    expect(words(items)).toEqual(expect.arrayContaining(['lshelf 1', 'lshelf 2', 'lshelf 3']));
    expect(words(items)).not.toContain('divider');
  });

  it('whose face it would be come last for a band', async () => {
    const items = await offeredFor(bookcase, bookcase.match(/band front of .*/)?.[0] ?? '', 'band front of lh, |');
    expect(words(items)).not.toContain('lh');
    expect(items.at(-1)).toMatchObject({ label: 'back', detail: 'front is a face of back, not an edge' });
  });
});

describe('stock', () => {
  const thin = periodicals
    .replace('cabinet Periodicals', 'material ply9 { thickness 9 }\n\ncabinet Periodicals')
    .replace('part shelf     : level   of birch18', 'part shelf : level of ply9');

  it('has the connectors first that the sheets can take, and says what keeps the others out', async () => {
    const items = await offeredFor(thin, 'bottom 350 above base.bottom', 'connect |');
    expect(words(items)).toEqual(['none', 'biscuit20', 'biscuit10', 'tenon8']);
    expect(items.find(({ label }) => label === 'tenon8')?.detail).toBe(
      'needs 16 with a wall beside it, shelf is 9 thick',
    );
    expect(words(await shelf('connect |'))).toEqual(['biscuit20', 'biscuit10', 'tenon8', 'none']);
  });

  it('has the patterns first that the run has room for, and says what the others need', async () => {
    const short = periodicals.replace('deep = 560', 'deep = 300');
    const items = await offeredFor(short, 'bottom 350 above base.bottom', 'connect biscuit20 by |');
    const deep5 = items.find(({ label }) => label === 'deep5');
    expect(deep5?.detail).toBe('needs 538, the run is 300');
    expect(labels(items).indexOf('deep5')).toBeGreaterThan(labels(items).indexOf('book3'));
    expect((await shelf('connect biscuit20 by |'))[0]).toMatchObject({
      label: 'deep5',
      detail: 'lines 70, 180, 270, 420, 500',
    });
  });

  it('has the sheets first that the cabinet is made of', async () => {
    const items = await offeredFor(periodicals, 'level   of birch18', 'level of |');
    expect(labels(items).slice(0, 2)).toEqual(['birch18', 'ply6']);
    expect(items[0]?.detail).toBe('18 mm thick, measured 17.7 mm');
  });

  it('has the machines first that cut for the connector', async () => {
    const { at } = await completing();
    const items = await at('import "shop.joinery"\nconnector c : loose tenon { along 22  by | }');
    expect(items.map(({ label, detail }) => [label, detail])).toEqual([
      ['mortiser', 'bit 8 mm'],
      ['joiner', 'cutter 100 mm: cuts no slot for a loose tenon'],
    ]);
  });
});

describe('words', () => {
  it('of facts are those of the joint’s verb, each once', async () => {
    const butt = words(await shelf('|'));
    expect(butt).toEqual(
      expect.arrayContaining(['flush', 'connect', 'datum', 'reference', 'spacer', 'leave', 'allow']),
    );
    for (const word of ['depth', 'width', 'clearance', 'lap', 'outer', 'front', 'rear'])
      expect(butt).not.toContain(word);
    const once = words(await shelf('datum rear\n connect biscuit20 by deep5\n |'));
    expect(once).not.toContain('datum');
    expect(once).not.toContain('connect');
    const groove = words(await offeredFor(periodicals, 'depth 8', '|'));
    expect(groove[0]).toBe('depth');
    for (const word of ['width', 'clearance', 'lap', 'outer']) expect(groove).not.toContain(word);
    const { at } = await completing();
    const head = 'cabinet A {\n part a, b : upright of x\n part c : level of x\n';
    expect(words(await at(`${head} mitre c between a and b { | }\n}`))[0]).toBe('outer');
    expect(words(await at(`${head} rest c between a and b { | }\n}`))).not.toContain('connect');
    expect(words(await at(`${head} rebate c between a and b { | }\n}`))[0]).toBe('lap');
  });

  it('of settings are those that the entry has not, and that its kind can have', async () => {
    const { at } = await completing();
    expect(words(await at('material m { thickness 18  sheet 1 x 2  | }'))).toEqual(
      expect.not.arrayContaining(['thickness', 'sheet']),
    );
    expect(words(await at('machine m { cutter 100 | }'))).toEqual(['kerf', 'base', 'body', 'source']);
    expect(words(await at('machine m { bit 8 | }'))).toEqual(['base', 'body', 'source']);
    expect(words(await at('connector c : dowel { | }'))).toEqual([
      'diameter',
      'length',
      'clearance',
      'plunge',
      'by',
      'packs',
      'spare',
      'source',
    ]);
    expect(words(await at('glue pva { packs of 5 kg\n | }'))).toEqual(['spread', 'spare', 'source']);
    expect(words(await at('band b { thickness 1\n | }'))).toEqual(['oversize', 'rolls', 'spare', 'source']);
    expect(words(await at('limits { wall beside slot 3\n | }'))).toEqual([
      'slot',
      'skin',
      'step',
      'alike',
      'sag',
      'gap',
      'movement',
      'glue',
      'joint',
    ]);
    expect(words(await at('jig j { stop 0 to 5 step 1\n | }'))).not.toContain('stop');
  });

  it('of a cabinet or a file that are said once are not offered again', async () => {
    expect(words(await offeredFor(periodicals, '  butt shelf', '  |\n  butt shelf'))).not.toContain('connect');
    const { at } = await completing();
    expect(words(await at('units mm\npose { }\n|'))).not.toContain('pose');
    expect(words(await at('units mm\n|'))).not.toContain('units');
  });

  it('offer no statement where one of its words means something else', async () => {
    expect(labels(await offeredFor(periodicals, 'level   of birch18', 'level of birch18 grain |'))).toEqual([
      'width',
      'depth',
      'height',
    ]);
  });
});

describe('checks', () => {
  it('that have found something in the joint come first', async () => {
    const text = periodicals.replace('deep = 560', 'deep = 505');
    const items = await offeredFor(text, 'bottom 350 above base.bottom', 'bottom 350 above base.bottom\n allow |');
    const first = items[0];
    expect(first?.detail).toMatch(/^\d+ findings? of this joint$/);
    const clean = await shelf('bottom 350 above base.bottom\n allow |');
    expect(clean.every(({ detail }) => detail === undefined)).toBe(true);
    expect(labels(clean)).not.toContain('never-used');
  });
});

describe('names of values', () => {
  it('leave out the parameter whose value is written, and those that rest on it', async () => {
    const text = periodicals.replace('parameter deep = 560', 'parameter deep = 560\n  parameter half = deep / 2');
    expect(words(await offeredFor(text, 'parameter deep = 560', 'parameter deep = |'))).toEqual(['wide', 'high']);
    expect(words(await offeredFor(text, 'parameter wide = 600', 'parameter wide = |'))).toEqual([
      'high',
      'deep',
      'half',
    ]);
  });

  it('in a line of a job are those not given yet', async () => {
    const items = await offeredFor(periodicals, 'wide = 450, deep = 320', 'wide = 450, |');
    expect(items.map(({ label, detail }) => [label, detail])).toEqual([
      ['high', '= 720'],
      ['deep', '= 560'],
    ]);
    expect(items[0]?.textEdit?.newText).toBe('high = ');
  });
});

describe('the order of a job’s work', () => {
  const job = (typed: string) =>
    offeredFor(periodicals, '  2 of Periodicals(wide = 450', `  ${typed}\n  2 of Periodicals(wide = 450`);

  it('names parts of the cabinets that the job makes, each once', async () => {
    expect(words(await job('late |'))).toEqual(['lh', 'rh', 'top', 'base', 'shelf', 'back']);
    expect(words(await job('late back, |'))).toEqual(['lh', 'rh', 'top', 'base', 'shelf']);
    expect(words(await job('mill lh of Periodicals before lh, |'))).toEqual(['rh', 'top', 'base', 'shelf', 'back']);
    expect(words(await job('mill lh of Periodicals |'))).toEqual(['before']);
  });

  it('names the cabinets that the job makes, and begins with its words', async () => {
    expect((await job('late back of |')).map(({ label, detail }) => [label, detail])).toEqual([
      ['Periodicals', 'made in this job'],
    ]);
    const begun = labels(await job('|'));
    expect(begun).toEqual(expect.arrayContaining(['late', 'mill', 'late … of …', 'mill … before …']));
  });
});

describe('imports', () => {
  it('name the files near and the library, but none twice', async () => {
    const { at } = await completing();
    const before = 'import "dryfit:bands"\n';
    expect(labels(await at(`${before}import "|`, `${before}import "shop.joinery"`))).toEqual([
      'shop.joinery',
      'dryfit:connectors',
      'dryfit:sheets',
      'dryfit:woods',
    ]);
    expect(labels(await at('connector c : dowel { source "|'))).toEqual([]);
  });
});
