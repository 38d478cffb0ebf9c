import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ToleranceJson } from '@dryfit/output';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run } from '../run.js';

const root = fileURLToPath(new URL('../../../../', import.meta.url));
let cwd: string;

beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'dryfit-tolerance-'));
  for (const name of ['shop', 'periodicals', 'rail-base', 'display-plinth', 'corner-plinth'])
    cpSync(join(root, `examples/${name}.joinery`), join(cwd, `${name}.joinery`));
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

async function dryfit(...args: readonly string[]) {
  const written = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({
    isTerminal: false,
    write: (text: string) => {
      written[to] += text;
    },
  });
  const code = await run(['tolerance', ...args], {
    out: stream('out'),
    err: stream('err'),
    cwd,
    env: {},
    uninterrupted: async (work) => work(),
  });
  return { code, ...written };
}

const json = async (...args: readonly string[]): Promise<ToleranceJson> =>
  JSON.parse((await dryfit(...args, '--format', 'json')).out);

describe('dryfit tolerance', () => {
  it('tells of each joint what adds up, that the thickness drops out, and where the figures stand', async () => {
    const { code, out, err } = await dryfit('periodicals.joinery', '--cabinet', 'Periodicals');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('top / lh; top / rh (butt top between lh and rh)');
    expect(out).toMatch(/step at the top: ± 0\.06, at the worst ± 0\.1; 0\.3 is let pass/);
    expect(out).toMatch(/drops out at the top: both halves .* From the other face it would come in, up to 0\.2\./);
    expect(out).toMatch(/outside width 600, over lh, base, rh: ± 0\.3, at the worst ± 0\.5/);
    expect(out).toMatch(/thickness of birch18 ± 0\.2: shop\.joinery:4/);
    expect(out).toContain('Nothing is said of, and nothing counted for: cup.');
  });

  it('has turned parts in it, from the cant they stand along to the room between their neighbours', async () => {
    const { code, out } = await dryfit('corner-plinth.joinery', '--measure', 'birch18=17.4');
    expect(code).toBe(0);
    expect(out).toMatch(/^face \/ base; face \/ top .*\n {2}step at the front: .*\n {4}from dirt on the cant of base/m);
    expect(out).toMatch(/drops out at the front: both halves .* From the other face it would come in, up to 0\.2\./);
    expect(out).toMatch(/flush at the right: .*\n.*saw, width of face/);
    expect(out).toMatch(/span 424\.26 of face, from stub to end, over stub, base, end: ± 0\.21, at the worst ± 0\.81/);
    expect(out).toMatch(/side, end, back, stub, face: length 564\.6 becomes 565\.2 \(\+0\.6\)/);
    expect(out).not.toMatch(/face.*: width /);
    expect(out).not.toContain('eft out');
    const [cabinet] = (await json('corner-plinth.joinery')).cabinets;
    const span = cabinet?.results.find(({ id }) => id === 'span face');
    expect(span).toMatchObject({ kind: 'span', through: ['stub', 'base', 'end'] });
    expect(span?.planned?.mm).toBeCloseTo(Math.hypot(300, 300), 9);
  });

  it('tells data that keep to their schema, the worst case exactly', async () => {
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/tolerance.schema.json'), 'utf8'));
    const validate = new Ajv2020({ strict: false }).compile(schema);
    for (const file of ['periodicals', 'rail-base', 'display-plinth', 'corner-plinth']) {
      const data = await json(
        `${file}.joinery`,
        '--samples',
        '200',
        '--measure',
        file === 'rail-base' ? 'ply34=18' : 'birch18=17.4',
      );
      expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    }
    const [cabinet] = (await json('periodicals.joinery')).cabinets;
    const step = cabinet?.results.find(({ id }) => id === 'top / lh step top');
    expect(step?.worst).toEqual({ least: { exact: '-1/10', mm: -0.1 }, most: { exact: '1/10', mm: 0.1 } });
    expect(step?.contributions[0]).toMatchObject({ origin: 'stop', place: { file: 'shop.joinery' } });
  });

  it('tries the same cabinets from the same seed, others from another, and none if it is to', async () => {
    const trialsOf = async (...args: readonly string[]) =>
      (await json('periodicals.joinery', ...args)).cabinets.flatMap(({ results }) =>
        results.map(({ trials }) => trials),
      );
    const seven = await trialsOf('--samples', '300', '--seed', '7');
    expect(await trialsOf('--samples', '300', '--seed', '7')).toEqual(seven);
    expect(await trialsOf('--samples', '300', '--seed', '8')).not.toEqual(seven);
    expect(new Set(await trialsOf('--samples', '0'))).toEqual(new Set([undefined]));
  });

  it('tells what another batch has re-cut, and what comes of it where nothing is', async () => {
    const { out } = await dryfit('periodicals.joinery', '--cabinet', 'Periodicals', '--measure', 'birch18=17.4');
    expect(out).toContain('top, base, shelf: length 564.6 becomes 565.2 (+0.6)');
    expect(out).toContain('re-set: no stop, spacer, base or line changes');
    expect(out).toMatch(/outside width 600, over lh, base, rh off by −0\.6/);
    const inches = await dryfit('rail-base.joinery', '--measure', 'ply34=11/16in');
    expect(inches.out).toContain('If ply34 measures 11/16');
    expect(inches.out).toContain('rearrail (rearrail / lh), rearrail (rearrail / rh): spacer');
  });

  it('tells errors by thousandths where lengths are in inches', async () => {
    const { out } = await dryfit('periodicals.joinery', '--units', 'in', '--cabinet', 'Periodicals', '--samples', '0');
    expect(out).toMatch(/step at the top: ± 0\.002", at the worst ± 0\.004"/);
  });

  it('counts nothing that nobody has written', async () => {
    const shop = readFileSync(join(cwd, 'shop.joinery'), 'utf8');
    writeFileSync(
      join(cwd, 'shop.joinery'),
      shop.replace(/tolerances \{[^}]*\}\n/, '').replaceAll(/ ± [\d/.]+"?/g, ''),
    );
    const { out } = await dryfit('periodicals.joinery', '--cabinet', 'Periodicals');
    expect(out).toContain(
      'counted for: saw, square, cuts, fence, spacer, stop, line, cup, dirt, thickness of birch18, thickness of ply6.',
    );
    expect(out).toContain('step at the top: nothing');
    expect(out).not.toMatch(/±\s*0\.[1-9]/);
  });

  it.each([
    [['nowhere.joinery'], /cannot read nowhere\.joinery/],
    [['periodicals.joinery', '--cabinet', 'Other'], /no cabinet Other/],
    [['periodicals.joinery', '--samples', '-1'], /whole number from 0/],
    [['periodicals.joinery', '--samples', 'many'], /whole number from 0/],
    [['periodicals.joinery', '--seed', '1.5'], /whole number from 0/],
    [['periodicals.joinery', '--measure', 'birch18'], /such as --measure birch18=17\.4/],
    [['periodicals.joinery', '--measure', 'birch18=0'], /such as --measure birch18=17\.4/],
    [['periodicals.joinery', '--measure', 'birch18=17-1/2'], /such as --measure birch18=17\.4/],
    [['periodicals.joinery', '--measure', 'oak=20'], /no part is of a material called oak; there is birch18, ply6/],
    [['periodicals.joinery', '--measure', 'ply6=6', '--measure', 'ply6=5'], /gives ply6 twice/],
  ])('exits with 2 and says why: %j', async (args, message) => {
    const { code, err } = await dryfit(...args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
