import { TextDocument } from 'langium';
import { expect, test } from 'vitest';
import type { Hover } from 'vscode-languageserver-types';
import { connect, example } from './client.fixture.js';

const periodicals = example('periodicals.joinery');
const head = /^[\s\S]*?(?=^cabinet )/m.exec(periodicals)?.[0] ?? '';
const cabinet = /^cabinet [\s\S]*?^}\n/m.exec(periodicals)?.[0] ?? '';
const names = Array.from({ length: 20 }, (_, i) => `Rack${i}`);
const text = head + names.map((name) => cabinet.replace('Periodicals', name)).join('\n');
/** So many lines further down, and the first cabinet so much wider. */
const typedOn = (by: number) => `${'\n'.repeat(by)}${text.replace('wide = 600', `wide = ${600 + by}`)}`;

const shelfIn = (of: string) => {
  const offset = of.indexOf('shelf ');
  return { position: TextDocument.create('memory:/racks', 'joinery', 0, of).positionAt(offset) };
};

test('of keys that come faster than they are followed, the last one counts, and what is asked meanwhile is of its text', async () => {
  const editor = await connect();
  await editor.type('racks.joinery', text);
  const before = editor.states.length;
  const keys = Array.from({ length: 40 }, (_, i) => i + 1);
  // None is waited for but the last: an editor does not wait either.
  const typed = keys.map((by) => editor.type('racks.joinery', typedOn(by)));
  const { position } = shelfIn(typedOn(40));
  const hover = editor.ask<Hover>('textDocument/hover', 'racks.joinery', { position });
  const last = await typed.at(-1);
  expect(last?.cabinets.length).toBe(names.length);
  expect((await hover).range?.start).toEqual(position);
  // 640 less two sides of 17.7.
  const after = await editor.ask<Hover>('textDocument/hover', 'racks.joinery', { position });
  expect(JSON.stringify(after.contents)).toContain('604.6');
  expect(editor.states.length - before).toBeLessThan(keys.length / 2);
  await editor.end();
});

test('a key while twenty cabinets are worked out takes their place, and they are worked out after it', async () => {
  const editor = await connect();
  await editor.type('racks.joinery', text);
  const everyOne = text.replaceAll('wide = 600', 'wide = 650');
  void editor.type('racks.joinery', everyOne);
  const broken = everyOne.replaceAll('by deep5', 'by lines 2, 180, 270');
  const { state, errors, warnings } = await editor.type('racks.joinery', broken);
  expect([state, errors + warnings >= names.length]).toEqual(['findings', true]);
  const mended = await editor.type('racks.joinery', text);
  expect(mended.state).toBe('fits');
  await editor.end();
});
