import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../testing/files.fixture.js';
import { type OutlineItem, outlineOf } from './outline.js';

const read = (name: string) => readFileSync(new URL(`../../../../examples/${name}.joinery`, import.meta.url), 'utf8');

async function outline(text: string): Promise<OutlineItem[]> {
  return outlineOf((await new FilesInMemory({ 'desk.joinery': text }).open('desk.joinery')).parseResult.value);
}

const drawn = (items: readonly OutlineItem[], indent = ''): string[] =>
  items.flatMap(({ kind, name, detail, children }) => [
    `${indent}${kind} ${name}${detail ? ` (${detail})` : ''}`,
    ...drawn(children, `${indent}  `),
  ]);

describe('the outline', () => {
  test('of a cabinet and its job', async () => {
    expect(drawn(await outline(read('periodicals')))).toEqual([
      'Cabinet Periodicals (cabinet)',
      '  Parameter wide (600)',
      '  Parameter high (720)',
      '  Parameter deep (560)',
      '  Part lh (upright of birch18)',
      '  Part rh (upright of birch18)',
      '  Part top (level of birch18)',
      '  Part base (level of birch18)',
      '  Part shelf (level of birch18)',
      '  Part back (facing of ply6)',
      '  Joint butt top between lh and rh (1 fact)',
      '  Joint butt base between lh and rh (1 fact)',
      '  Joint groove back between lh and rh, base and top (4 facts)',
      '  Joint butt shelf between lh and rh (3 facts)',
      'Job Library (job)',
      '  JobLine 4 of Periodicals (wide = 600)',
      '  JobLine 2 of Periodicals (wide = 450, deep = 320)',
    ]);
  });

  test('of a job has what is milled before what, in its place', async () => {
    const text = read('periodicals').replace(
      '2 of',
      'late back of Periodicals\n  mill lh, rh of Periodicals before top of Periodicals\n  2 of',
    );
    expect(drawn(await outline(text)).slice(-4)).toEqual([
      '  JobLine 4 of Periodicals (wide = 600)',
      '  LateLine late back (of Periodicals)',
      '  MillLine mill lh, rh before top (of Periodicals)',
      '  JobLine 2 of Periodicals (wide = 450, deep = 320)',
    ]);
  });

  test('has what needs no name, and like parts with their numbers', async () => {
    expect(drawn(await outline(read('shop'))).slice(-5)).toEqual([
      'Jig longbed (jig)',
      'Pose pose (pose)',
      'Limits limits (limits)',
      'Tolerances tolerances (tolerances)',
      'Glue pva (glue)',
    ]);
    expect(drawn(await outline(read('bookcase')))).toContain('  Part lshelf (1 to 3, level of birch18)');
  });

  test('names what has no name yet, and every name lies within its thing', async () => {
    const texts = ['cabinet { part : }', 'cabinet A { butt ', 'job', 'job { 2 of }', 'material', read('bookcase'), ''];
    const check = (items: readonly OutlineItem[]) => {
      for (const { name, start, end, named, children } of items) {
        expect(name).not.toBe('');
        expect(named.start).toBeGreaterThanOrEqual(start);
        expect(named.end).toBeLessThanOrEqual(end);
        check(children);
      }
    };
    for (const text of texts) check(await outline(text));
  });
});
