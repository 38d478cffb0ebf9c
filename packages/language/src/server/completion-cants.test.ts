import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { completing, examples, words } from './completion.fixture.js';

const plinth = readFileSync(new URL('corner-plinth.joinery', examples), 'utf8');

async function offeredFor(line: string, typed: string) {
  expect(plinth).toContain(line);
  const { at } = await completing();
  return words(await at(plinth.replace(line, typed), plinth));
}

const face = 'facing  of birch18 on base.cant';
const CANT = /cant base, top[^}]*\}/.exec(plinth)?.[0] ?? '';

it('a part stands on the cant of what lies level', async () => {
  expect(await offeredFor(face, 'facing of birch18 |')).toContain('on');
  expect(await offeredFor(face, 'facing of birch18 on |')).toEqual(['base', 'top']);
  expect(await offeredFor(face, 'facing of birch18 on base.|')).toEqual(['cant']);
});

it('a cant is cut where two edges meet, and has a size along both', async () => {
  const second = await offeredFor(CANT, 'cant base at front |');
  expect(second).toEqual(['left', 'right', 'bottom', 'top']);
  expect(await offeredFor(CANT, 'cant base at front right { | }')).toEqual(['width', 'depth', 'allow']);
  expect(await offeredFor(CANT, 'cant base at front right { width 300  | }')).toEqual(['depth', 'plus', 'allow']);
});

it('only a turned part is joined to a cant', async () => {
  expect(await offeredFor('butt face between base and top', 'butt face to base.|')).toContain('cant');
  expect(await offeredFor('butt back to side.right { connect none "glued" }', 'butt back to base.|')).not.toContain(
    'cant',
  );
});
