import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { root } from '../house/sources.js';
import { dryfit } from '../support/command.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dryfit-calibrate-'));
  cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const shop = () => join(folder, 'examples/shop.joinery');
const cabinets = () => join(folder, 'examples/periodicals.joinery');
const data = async (...args: readonly string[]) => {
  const { code, out, err } = await dryfit('calibrate', ...args, '--format', 'json');
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(out);
};
/** Thousandths of a millimetre as they are typed. */
const typed = (thousandths: number): string => (thousandths / 1000).toFixed(3);

describe('a test joint on the command line', () => {
  it('gives back what a machine is really off, from what its joint shows', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 8_000, max: 11_000 }),
        fc.integer({ min: 16_000, max: 25_000 }),
        async (base, thickness) => {
          // Turned over, the reference face of one piece lies as far beyond the slots as the plain one of the other is short of it.
          const step = base - (thickness - base);
          const side = step < 0 ? '--plain-proud' : '--reference-proud';
          const found = await data(shop(), 'joiner', '--scrap', typed(thickness), side, typed(Math.abs(step)));
          expect(found.base.value.mm).toBe(base / 1000);
          expect(found.base.within.mm).toBe(0.05);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('prints a line that, written where it says, makes the shop agree with the machine', async () => {
    const args = ['joiner', '--scrap', '17.65', '--reference-proud', '1.1'] as const;
    const { write, described } = await data(cabinets(), ...args);
    expect(described).toMatch(/shop\.joinery:11$/);
    const before = readFileSync(shop(), 'utf8').split('\n');
    expect(before[10]).toContain('base to centre 9.5 ± 0.1');
    before[10] = before[10]?.replace('base to centre 9.5 ± 0.1', write[0]) ?? '';
    writeFileSync(shop(), before.join('\n'));
    const after = await data(cabinets(), ...args);
    expect([after.set.mm, after.base.value.mm, after.write]).toEqual([9.375, 9.375, []]);
    expect((await dryfit('check', cabinets())).code).toBe(0);
  });

  it('says that both halves of a joint move together, and by how much', async () => {
    const { out } = await dryfit('calibrate', cabinets(), 'joiner', '--scrap', '17.65', '--reference-proud', '1.1');
    expect(out).toContain('(17.65 thick + 1.1 (REFERENCE proud)) / 2 = 9.375');
    expect(out).toContain('base to centre 9.375 ± 0.1');
    expect(out).toMatch(/Periodicals: 12 groups of slots lie 0\.125 nearer to what they are measured from/);
    expect(out).toContain('both halves of every joint move together');
  });

  it('leaves what is off by no more than measuring is', async () => {
    const { out } = await dryfit('calibrate', shop(), 'joiner', '--scrap', '17.65', '--reference-proud', '1.3');
    expect(out).toContain('no more than measuring may be off: leave it as it is');
    expect(out).not.toContain('to be written');
    const sure = await data(shop(), 'joiner', '--scrap', '17.65', '--reference-proud', '1.3', '--within', '0.02');
    expect(sure.write).toEqual(['base to centre 9.475 ± 0.1']);
  });

  it('tells the depth by the gap, or that a joint which closes does not', async () => {
    const open = await data(shop(), 'joiner', '--connector', 'biscuit20', '--gap', '0.4');
    // 23 across, it stands on both bottoms and keeps the edges 0.4 apart: 11.3 each, where 12.3 was set.
    expect([open.depth.deeper.value.mm, open.depth.short.mm, open.write]).toEqual([-1, 0.4, ['plunge 11.3']]);
    const closed = await data(shop(), 'joiner', '--connector', 'biscuit20', '--gap', '0');
    expect([closed.depth.closes, closed.depth.deeper, closed.write]).toEqual([true, undefined, []]);
    const both = await data(shop(), 'mortiser', '--depth', '27.5');
    expect(both.write).toEqual(['plunge 13.5 in face, 27.5 in edge']);
  });

  it('writes in the units of the file that has the machine, and asks what a base was set to', async () => {
    const inches = join(folder, 'examples/rail-base.joinery');
    const found = await data(inches, 'joiner', '--nearer', '0.3', '--farther', '0.5');
    expect(found.base.value.mm).toBeCloseTo(10.16, 12);
    expect(found.write).toEqual(['base to centre 10.16 ± 0.1', 'kerf 5.08']);
    expect(await dryfit('calibrate', shop(), 'mortiser', '--scrap', '18', '--plain-proud', '0.4')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--set'),
    });
    const { out } = await dryfit(
      ...['calibrate', shop(), 'mortiser', '--set', '9', '--scrap', '18', '--plain-proud', '0.4'],
    );
    expect(out).toContain('set 9.2 where 9 is wanted');
  });

  it('finds a stop that is off, whatever the machine really is, and what comes of it in the cabinets', async () => {
    const [off, base] = [fc.integer({ min: 100, max: 900 }), fc.integer({ min: 9_450, max: 9_550 })];
    await fc.assert(
      fc.asyncProperty(off, fc.boolean(), base, fc.integer({ min: 40, max: 300 }), async (by, isNear, real, half) => {
        const error = isNear ? -by : by;
        const set = half * 500;
        // The stop stands at what was set and its error, the slot as much further as the base; the edge's slot is at the base.
        const middle = set + error + real;
        const args = ['--stop', typed(set), '--stands', typed(middle - real)];
        const walls = ['--end-nearer', typed(middle - 2_000), '--end-farther', typed(middle + 2_000)];
        for (const more of [[], walls]) {
          const { stop, write } = await data(cabinets(), 'joiner', ...args, ...more);
          expect([stop.jig, stop.farther.value.mm, stop.farther.within.mm]).toEqual(['longbed', error / 1000, 0.05]);
          expect(write).toEqual([`stop ± ${Number(((by + 50) / 1000).toFixed(3))}`]);
          for (const { slots, askew } of stop.cabinets) {
            expect(slots.map(({ part }: { part: string }) => part)).toEqual(['lh', 'rh']);
            for (const { from, to } of slots) expect([from.mm, to.mm]).toEqual([359.5, 359.5 + error / 1000]);
            expect(askew).toEqual([]);
          }
        }
      }),
      { numRuns: 8 },
    );
  });

  it('tells of a part that one stop moves and another does not, and lets be what the shop holds a stop to', async () => {
    const askew = join(folder, 'examples/askew.joinery');
    // One side hangs 300 lower than the other: the shelf goes to the very end of the one, and to a stop on the other.
    const text = `units mm
import "shop.joinery"
cabinet Step {
  part lh, rh : upright of birch18
  part shelf : level of birch18
  width 600 over lh and rh
  height 700 of lh, rh
  depth 320 of lh, rh
  rh.bottom 300 below lh.bottom
  rh.rear flush with lh
  butt shelf between lh and rh { bottom flush with lh  flush rear, front  reference bottom  connect biscuit20 by deep5 }
}
`;
    writeFileSync(askew, text);
    const { stop } = await data(askew, 'joiner', '--stop', '100', '--stands', '100.3');
    expect(stop.cabinets[0].slots).toHaveLength(1);
    expect(stop.cabinets[0].askew.map(({ part, by }: { part: string; by: { mm: number } }) => [part, by.mm])).toEqual([
      ['shelf', 0.3],
    ]);
    const { out } = await dryfit(
      'calibrate',
      askew,
      'joiner',
      '--stop',
      '100',
      '--stands',
      '100.04',
      '--within',
      '0.02',
    );
    expect(out).toContain('the shop lets a stop be 0.05 off, so it may stay as it is');
    expect(out).not.toContain('to be written');
  });

  it('prints data as its schema says', async () => {
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/calibration.schema.json'), 'utf8'));
    const valid = new Ajv2020({ strict: false }).compile(schema);
    for (const args of [
      [cabinets(), 'joiner', '--scrap', '17.65', '--reference-proud', '1.1', '--connector', 'biscuit10', '--gap', '1'],
      [shop(), 'joiner', '--nearer', '7.2', '--farther', '11.5'],
      [shop(), 'mortiser', '--depth', '28'],
      [cabinets(), 'joiner', '--stop', '100', '--stands', '100.4', '--end-nearer', '107.9', '--end-farther', '111.9'],
    ]) {
      const found = await data(...args);
      expect([valid(found), valid.errors]).toEqual([true, null]);
    }
  });
});

describe('without a measured figure', () => {
  it('says how to mill and to measure the joint, why one half is turned over, and the cautions; and changes nothing', async () => {
    const before = readdirSync(join(folder, 'examples'));
    const { code, out } = await dryfit('calibrate', shop(), 'joiner', '--scrap', '17.65');
    expect(code).toBe(0);
    for (const words of ['ONE PIECE TURNED OVER', 'an error of the base drops out', 'REFERENCE proud by 1.35'])
      expect(out).toContain(words);
    expect(out).toMatch(/Stop of longbed: .*\n.*REFERENCE looks to the END/);
    expect(out).toContain("The machine's manual and local rules come before this sheet.");
    expect(readdirSync(join(folder, 'examples'))).toEqual(before);
  });
});

describe('what cannot be meant', () => {
  it.each([
    [['jointer', '--gap', '1'], 'there is no machine jointer'],
    [['joiner', '--gap', '1'], '--connector'],
    [['joiner', '--reference-proud', '1'], '--scrap'],
    [['joiner', '--reference-proud', '1', '--plain-proud', '1', '--scrap', '18'], 'not both'],
    [['joiner', '--nearer', '7'], '--nearer and --farther'],
    [['joiner', '--nearer', '12', '--farther', '7'], 'less than --farther'],
    [['joiner', '--scrap', '12', '--reference-proud', '13'], 'no slot of the machine could lie'],
    [['joiner', '--scrap', '-3', '--reference-proud', '1'], 'above zero'],
    [['joiner', '--scrap', '17-1/2', '--reference-proud', '1'], 'above zero'],
    [['joiner', '--set', '9', '--scrap', '18', '--reference-proud', '1'], 'fixed'],
    [['mortiser', '--set', '90', '--scrap', '18', '--reference-proud', '1'], 'outside'],
    [['joiner', '--connector', 'biscuit20', '--gap', '40'], '--gap is more'],
    [['joiner', '--format', 'json'], 'nothing was measured'],
    [['joiner', '--stop', '100'], 'give --stands'],
    [['joiner', '--stands', '100'], 'give what the stop was set to'],
    [['joiner', '--stop', '900', '--stands', '900'], 'outside'],
    [['joiner', '--stop', '100.2', '--stands', '100'], 'in steps of 0.5'],
    [['joiner', '--stop', '100', '--end-nearer', '107'], '--end-nearer and --end-farther'],
    [['joiner', '--stop', '100', '--end-nearer', '112', '--end-farther', '107'], 'less than --end-farther'],
    [['mortiser', '--stop', '100', '--end-nearer', '105', '--end-farther', '113'], '--set'],
    [
      ['joiner', '--stop', '100', '--stands', '100.3', '--end-nearer', '107.2', '--end-farther', '111.2'],
      'contradict each other',
    ],
  ])('%s is refused in one line', async (args, words) => {
    const { code, out, err } = await dryfit('calibrate', shop(), ...args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(words);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
