import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { all, read } from '../drawings/paper.js';
import { dryfit } from '../support/command.js';

let out: string;
beforeEach(() => {
  out = join(mkdtempSync(join(tmpdir(), 'dryfit-draw-')), 'tables');
});
afterEach(() => {
  rmSync(join(out, '..'), { recursive: true, force: true });
});

const drawings = (cabinet: string): string[] => readdirSync(join(out, cabinet, 'drawings')).sort();
const drawing = (cabinet: string, name: string): string => readFileSync(join(out, cabinet, 'drawings', name), 'utf8');
const draw = (file: string, ...more: readonly string[]) => dryfit('draw', `examples/${file}`, '--out', out, ...more);

describe('dryfit draw', () => {
  it('writes each variant exploded and each different piece once', async () => {
    const { code, err, out: said } = await draw('periodicals.joinery');
    expect([code, err]).toEqual([0, '']);
    expect(said).toContain('wrote 12 drawings');
    // Top and base are one piece turned over.
    const wanted = ['back.svg', 'exploded.svg', 'lh.svg', 'rh.svg', 'shelf.svg', 'top.svg'];
    expect(drawings('Periodicals')).toEqual(wanted);
    expect(drawings('Periodicals-wide-450-deep-320')).toEqual(wanted);
    expect(all(read(drawing('Periodicals', 'shelf.svg'))).map(({ text }) => text)).toContain('478');
  });

  it('leaves the tables of a build alone, as a build leaves drawings, and takes away its own that no longer hold', async () => {
    await draw('periodicals.joinery');
    expect((await dryfit('build', 'examples/periodicals.joinery', '--out', out)).code).toBe(0);
    expect(drawings('Periodicals')).toHaveLength(6);
    const again = await draw('periodicals.joinery', '--part', 'shelf');
    expect(again.out).toContain('removed 10 drawings');
    expect(drawings('Periodicals')).toEqual(['shelf.svg']);
    expect(existsSync(join(out, 'Periodicals', 'slots.csv'))).toBe(true);
  });

  it('prints in the units asked for', async () => {
    await draw('periodicals.joinery', '--units', 'in', '--part', 'lh');
    expect(drawing('Periodicals', 'lh.svg')).toContain('22 3/64');
  });

  it('looks from where it is told', async () => {
    await draw('bookcase.joinery');
    const usual = drawing('Bookcase', 'exploded.svg');
    expect(usual).toMatch(/>front</);
    await draw('bookcase.joinery', '--turn', '180', '--tilt', '-10', '--apart', '0');
    expect(drawing('Bookcase', 'exploded.svg')).toMatch(/>rear</);
    expect(drawing('Bookcase', 'exploded.svg')).not.toMatch(/>front</);
  });

  it('writes nothing with errors, and marks every drawing when it is to draw all the same', async () => {
    const refused = await draw('broken/slot-near-edge.joinery');
    expect(refused).toMatchObject({ code: 1, out: '' });
    expect(refused.err).toContain('nothing was drawn');
    expect(existsSync(out)).toBe(false);
    expect((await draw('broken/slot-near-edge.joinery', '--with-errors')).code).toBe(1);
    const [cabinet = ''] = readdirSync(out).filter((name) => !name.endsWith('.json'));
    expect(drawings(cabinet).length).toBeGreaterThan(1);
    for (const name of drawings(cabinet))
      expect(drawing(cabinet, name)).toContain('do not cut or mill from this drawing');
  });

  it.each([
    [['--tilt', '100'], 'from -90 to 90'],
    [['--apart', ''], 'from 0 to 1'],
    [['--turn', 'left'], 'from -360 to 360'],
    [['--part', 'door'], 'there is no part called door; there is back, base, lh, rh, shelf, top'],
  ])('refuses %j', async (given, reason) => {
    const { code, err } = await draw('periodicals.joinery', ...given);
    expect(code).toBe(2);
    expect(err).toContain(reason);
    expect(existsSync(out)).toBe(false);
  });
});
