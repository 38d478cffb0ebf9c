import { readFileSync } from 'node:fs';
import type { Fact, JointStatement, PlaneRef, Spec, Statement } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { FilesInMemory, tell } from '../testing/files.fixture.js';

const example = (name: string) => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8');
const shop = example('shop.joinery');

async function specOf(name: string): Promise<Spec> {
  const { cabinets, findings } = await new FilesInMemory({ 'shop.joinery': shop, [name]: example(name) }).examine(name);
  const spec = cabinets[0]?.spec;
  if (!spec) throw new Error(`no cabinet in ${name}: ${findings.map(({ code }) => code)}`);
  return spec;
}

const plane = ({ part, plane: side, of }: PlaneRef) => `${part}${of === 'part' ? '' : `.${of}`}.${side}`;
const mm = (lengths: readonly { readonly value: unknown }[]) => lengths.map(({ value }) => `${value}`).join(', ');

function factWords(fact: Fact): string {
  switch (fact.kind) {
    case 'flush':
      return `flush ${fact.sides.join(', ')}`;
    case 'flush with':
    case 'against':
      return `${fact.side} ${fact.kind} ${plane(fact.plane)}`;
    case 'set back':
    case 'proud':
      return `${fact.side} ${fact.kind} ${fact.by.value} ${plane(fact.plane)}`;
    case 'at':
      return `${fact.side} ${mm(fact.by)} ${fact.toward} ${plane(fact.plane)}`;
    case 'centred':
      return `centred ${fact.low} ${fact.high}`;
    case 'openings':
      return `openings ${plane(fact.low)} ${plane(fact.high)} ${fact.step?.value ?? 'exact'}`;
  }
}

function jointWords(joint: JointStatement): string[] {
  const { connect, datum, reference, depth, width, clearance } = joint;
  return [
    ...joint.facts.map(factWords),
    ...(connect ? [connect.kind === 'by' ? `${connect.connector} ${connect.pattern}` : `none ${connect.reason}`] : []),
    ...(datum ? [`datum ${datum.side}`] : []),
    ...(reference ? [`reference ${reference.side}`] : []),
    ...Object.entries({ depth, width, clearance }).flatMap(([word, length]) =>
      length ? [`${word} ${length.value}`] : [],
    ),
  ];
}

function words(statement: Statement): string {
  switch (statement.kind) {
    case 'joint':
      return `${statement.id} [${statement.entering.join(', ')}] ${jointWords(statement).join('; ')}`;
    case 'dimension':
      return `${statement.id} ${statement.length.value}`;
    case 'notch':
    case 'cant':
      return `${statement.id} ${statement.legs.map(({ dimension, length }) => `${dimension} ${length.value}`).join(', ')}`;
    case 'band':
    case 'load':
      return `${statement.id} [${statement.parts.join(', ')}]`;
    case 'moisture':
      return statement.id;
    case 'placing':
      return `${statement.id} ${factWords(statement.fact)}`;
  }
}

describe('the worked cabinets', () => {
  test('a simple base', async () => {
    const spec = await specOf('periodicals.joinery');
    expect(spec.parts.map(({ id, attitude, material }) => `${id}: ${attitude} of ${material}`)).toEqual([
      'lh: upright of birch18',
      'rh: upright of birch18',
      'top: level of birch18',
      'base: level of birch18',
      'shelf: level of birch18',
      'back: facing of ply6',
    ]);
    expect(spec.parameters.map(({ name, value }) => `${name} ${value}`)).toEqual(['wide 600', 'high 720', 'deep 560']);
    expect(spec.connect).toMatchObject({ kind: 'by', connector: 'biscuit20', pattern: 'deep5' });
    expect(spec.statements.map(words)).toEqual([
      'width over lh and rh 600',
      'height of lh 720',
      'depth of lh 560',
      'butt top between lh and rh [top] flush top, rear, front',
      'butt base between lh and rh [base] flush bottom, rear, front',
      'groove back between lh and rh, base and top [back] rear set back 16 lh.rear; depth 8; width 6; clearance 1/2',
      'butt shelf between lh and rh [shelf] bottom 350 above base.bottom; rear against back.groove.front; flush front',
    ]);
  });

  test('a bookcase with like parts', async () => {
    const spec = await specOf('bookcase.joinery');
    expect(spec.parts.filter(({ kind }) => kind === 'lshelf').map(({ id, index }) => [id, index])).toEqual([
      ['lshelf 1', 1],
      ['lshelf 2', 2],
      ['lshelf 3', 3],
    ]);
    const statements = spec.statements.map(words);
    expect(statements).toContain(
      'band front of lh, rh, top, base, divider, lshelf, rshelf with edge1 [lh, rh, top, base, divider, lshelf 1, lshelf 2, lshelf 3, rshelf 1, rshelf 2, rshelf 3]',
    );
    expect(statements).toContain(
      'butt divider between base and top [divider] centred lh rh; rear against back.groove.front; flush front; reference left',
    );
    expect(statements).toContain(
      'butt lshelf between lh and divider [lshelf 1, lshelf 2, lshelf 3] bottom 290, 540, 790 above base.bottom; rear against back.groove.front; flush front',
    );
  });

  test('a rail base in inches', async () => {
    const spec = await specOf('rail-base.joinery');
    expect(spec.statements.map(words)).toEqual([
      'width over lh and rh 762',
      'height of lh, rh 8763/10',
      'depth of lh 11811/20',
      'depth of frontrail, rearrail 508/5',
      'height of nailer 508/5',
      'notch lh, rh at front bottom depth 381/5, height 508/5',
      'butt base between lh and rh [base] bottom 508/5 above lh.bottom; flush rear, front; biscuit20 deepin',
      'butt frontrail between lh and rh [frontrail] flush top, front; datum front',
      'butt nailer between lh and rh [nailer] flush top, rear; datum top',
      ...spec.statements.slice(9).map(words),
    ]);
    expect(spec.statements.slice(9).map(words)).toContain(
      'groove back to base.top [back] depth 381/40; clearance 127/160',
    );
    expect(`${spec.shop.materials.get('ply34')?.measured?.value}`).toBe('2921/160');
  });

  test('statements are named from the names in them, wherever they stand', async () => {
    const text = example('periodicals.joinery');
    const turned = text.replace(/^(\s*butt top .*\n)(\s*butt base .*\n)/m, '$2$1\n  // turned round\n');
    expect(turned).not.toBe(text);
    const { cabinets } = await new FilesInMemory({ 'shop.joinery': shop, 'a.joinery': turned }).examine('a.joinery');
    const ids = (spec: Spec | undefined) => spec?.statements.map(({ id }) => id).sort();
    expect(ids(cabinets[0]?.spec)).toEqual(ids(await specOf('periodicals.joinery')));
  });
});

const desk = (...lines: string[]) =>
  [
    'material ply { thickness 18 }',
    'cabinet Desk {',
    '  part a, b : upright of ply',
    '  parts c 1 to 3 : level of ply',
    ...lines,
    '}',
  ].join('\n');

describe('statements that do not agree with themselves', () => {
  test.each([
    ['butt c between a and b { bottom 1, 2 above a.bottom }', 'offset-count `1, 2`: 2 offsets are written for 3 parts'],
    [
      'butt c between a and b { front flush with a.rear }',
      'flush-sides-differ `a.rear`: front and rear are different sides; flush brings the same side of two parts into one plane',
    ],
    [
      'butt c between a and b { front against a.front }',
      'against-same-way `a.front`: a.front looks to the front too, and two sides that look the same way cannot touch',
    ],
    [
      'butt c between a and b { front against a.top }',
      'against-same-way `a.top`: front and a.top lie across each other, so they cannot touch',
    ],
    [
      'butt c between a and b { left 3 above a.bottom }',
      'wrong-side `a.bottom`: the left of a part is measured between left and right, and a.bottom lies across that',
    ],
    [
      'butt c between a and b { left 3 above a.left }',
      'wrong-side `left`: the left of a part cannot be moved up: it lies that way itself',
    ],
    [
      'butt c between a and b { front set back 3 from a.top }',
      'wrong-side `a.top`: the front of a part is measured between front and rear, and a.top lies across that',
    ],
    [
      'width 3 from a.top to b.left',
      'wrong-side `a.top`: a width is measured between left and right, and a.top lies across that',
    ],
    [
      'butt c between a and b { centred between a and c 1 }',
      'wrong-side `centred between a and c 1`: a is an upright part and c 1 a level part, so there is no middle between them',
    ],
    ['butt a to c.top', 'one-part-wanted `c`: c stands for 3 parts, and one of them is meant here'],
    ['butt a to c 4.top', 'no-such-part `c 4`: there is no c 4: c has the numbers 1 to 3'],
    ['butt c to a 1.right', 'no-such-part `a 1`: a is one part and has no number 1'],
    [
      'a.front against b.groove.rear',
      'no-such-plane `b.groove.rear`: b sits in no groove, so there is no b.groove.rear',
    ],
    ['groove c between a and b', 'fact-missing `groove`: a groove needs its depth'],
    [
      'butt c between a and b { depth 8 }',
      'not-of-this-kind `depth 8`: a butt joint has no depth: a groove or a housing has one',
    ],
    [
      'butt c between a and b { datum rear datum front }',
      'written-twice `datum front`: datum is written twice in this joint',
    ],
    ['notch a at front rear { depth 3 height 4 }', 'wrong-side `rear`: front and rear do not meet in a corner'],
    [
      'notch a at front bottom { depth 3 }',
      'setting-missing `notch a at front bottom { depth 3 }`: a notch at front bottom needs its size along both',
    ],
  ])('%s', async (line, wanted) => {
    const { findings } = await new FilesInMemory({ 'desk.joinery': desk(line) }).examine('desk.joinery');
    const language = [
      'unit',
      'offset',
      'flush-s',
      'against',
      'wrong-side',
      'one-part',
      'no-such',
      'fact-',
      'not-of',
      'written',
      'setting',
    ];
    const codes = findings.map(({ code }) => code).filter((code) => language.some((start) => code.startsWith(start)));
    expect(await tell(desk(line), ...codes)).toEqual([wanted]);
  });

  test('a fact that cannot be read is left out, and the joint stays', async () => {
    const text = desk('butt c between a and b { bottom 1, 2 above a.bottom  flush front  rear against nowhere.front }');
    const { cabinets } = await new FilesInMemory({ 'desk.joinery': text }).examine('desk.joinery');
    const [joint] = cabinets[0]?.spec.statements ?? [];
    expect(joint?.kind === 'joint' && joint.facts.map(({ kind }) => kind)).toEqual(['flush']);
  });
});
