import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DRAWINGS, type DrawnFile, SLOT_TABLE, SLOTS, type SlotRows, type TextPlace } from '@dryfit/language/protocol';
import { elevation, exploded, USUAL_VIEW } from '@dryfit/output';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { litBy } from '../../packages/extension/src/panel/linking.js';
import { rowsAt } from '../../packages/extension/src/slots/rows.js';
import { namedIn, shapesIn } from '../../packages/extension/src/webview/drawing/shapes.js';
import { partOf, START } from '../../packages/extension/src/webview/drawing/state.js';
import { connect, exampleUri } from '../../packages/language/src/server/client.fixture.js';
import { dryfit } from '../support/command.js';
import { examples } from '../support/examples.js';

/** Text and drawing lead to each other, both ways and across files, for everything drawn of every example. */

const withCabinets = examples().filter(({ text }) => /^cabinet /m.test(text));
const textOf = new Map(examples().map(({ name, text }) => [exampleUri(name), text]));

let client: Awaited<ReturnType<typeof connect>>;
beforeAll(async () => {
  client = await connect();
});
afterAll(() => client.end());

test('there are examples to link', () => {
  expect(withCabinets.length).toBeGreaterThan(4);
});

describe.each(withCabinets)('$name', ({ name, text }) => {
  let drawn: DrawnFile;
  let slots: SlotRows;
  beforeAll(async () => {
    await client.type(name, text);
    drawn = await client.ask<DrawnFile>(DRAWINGS, name);
    slots = await client.ask<SlotRows>(SLOTS, name);
  });

  test('every drawn shape has a place, and every place lights it up', () => {
    expect(drawn.cabinets.length).toBeGreaterThan(0);
    for (const { scene, places } of drawn.cabinets) {
      const shapes = new Set(
        [exploded(scene, USUAL_VIEW), ...scene.parts.map(({ part }) => elevation(scene, part))].flatMap(shapesIn),
      );
      expect(shapes.size).toBeGreaterThanOrEqual(scene.parts.length);
      for (const shape of shapes) {
        const [first, ...others] = places[shape] ?? [];
        expect(first, shape).toBeDefined();
        for (const [i, place] of [first as TextPlace, ...others].entries()) {
          for (const at of [place.range.start, place.range.end]) {
            const lit = litBy(drawn, place.uri, at)[scene.title]?.[shape];
            expect(i === 0 ? ['given'] : ['given', 'named'], `${shape} at ${place.uri}:${at.line}`).toContain(lit);
          }
        }
      }
    }
  });

  test('a part leads to where its name is given, a slot to its joint', () => {
    for (const { scene, places } of drawn.cabinets) {
      for (const part of scene.parts) {
        expect(wordsAt(places[part.shape]?.[0])).toMatch(/^[\p{L}\p{N} _-]+$/u);
        for (const cut of part.cuts)
          if (cut.measured) expect(wordsAt(places[cut.shape]?.[0])).toMatch(/^(butt|mitre|rest)/);
      }
    }
  });

  test('a name beside the drawing leads to where its part is named, and that place lights it up', () => {
    for (const { scene, places } of drawn.cabinets) {
      const named = namedIn(exploded(scene, USUAL_VIEW));
      expect(named).toHaveLength(scene.parts.filter(({ box }) => box !== undefined).length);
      for (const shape of named) {
        const [first] = places[shape] ?? [];
        const name = scene.parts.find((part) => part.shape === shape)?.part ?? '';
        // "shelf 2" is one of those that the text calls "shelf".
        expect(name.replace(/ \d+$/, '')).toBe(wordsAt(first));
        expect(
          litBy(drawn, first?.uri ?? '', first?.range.end ?? { line: 0, character: 0 })[scene.title]?.[shape],
        ).toBe('given');
      }
    }
  });

  test('places in other files light up what draws on them', () => {
    const elsewhere = drawn.cabinets.flatMap(({ places }) =>
      Object.values(places).flatMap((all) => all.filter(({ uri }) => uri !== exampleUri(name))),
    );
    expect(elsewhere.length).toBeGreaterThan(0);
    for (const place of elsewhere) expect(Object.keys(litBy(drawn, place.uri, place.range.start))).not.toEqual([]);
  });

  test('every row of the slot table leads to a place that marks it', () => {
    slots.rows.forEach((row, i) => {
      const [first] = row.places;
      expect(first).toBeDefined();
      expect(rowsAt(slots, first?.uri ?? '', first?.range.start ?? { line: 0, character: 0 })).toContain(i);
    });
  });

  test.each(['csv', 'markdown'] as const)('the slot table is copied as the command line writes it: %s', async (as) => {
    const out = mkdtempSync(join(tmpdir(), 'dryfit-slots-'));
    try {
      await dryfit('build', `examples/${name}`, '--out', out);
      const copied = await Promise.all(
        drawn.cabinets.map(({ scene }) => client.ask<string>(SLOT_TABLE, name, { as, cabinet: scene.title })),
      );
      const folders = readdirSync(out).filter((folder) => existsSync(join(out, folder, 'slots.csv')));
      const cabinets = folders.filter((folder) => !folder.startsWith('job'));
      expect(cabinets.length).toBeGreaterThan(0);
      for (const folder of cabinets) {
        expect(copied).toContain(readFileSync(join(out, folder, as === 'csv' ? 'slots.csv' : 'slots.md'), 'utf8'));
      }
    } finally {
      rmSync(out, { recursive: true, force: true });
    }
  });

  test('rows are copied in the order they are listed, and read as in the whole table', async () => {
    const [first] = drawn.cabinets;
    const mine = [...slots.rows.keys()].filter((row) => slots.rows[row]?.cabinet === first?.scene.title);
    const asked = { as: 'csv', cabinet: first?.scene.title };
    const whole = (await client.ask<string>(SLOT_TABLE, name, asked)).split('\r\n');
    const some = mine.filter((_, i) => i % 2 === 1).reverse();
    const copied = (await client.ask<string>(SLOT_TABLE, name, { ...asked, rows: some })).split('\r\n');
    expect(copied).toEqual([whole[0], ...some.map((row) => whole[mine.indexOf(row) + 1]), '']);
  });

  test('a part can be drawn alone', () => {
    for (const { scene } of drawn.cabinets) expect(partOf(scene, START)).toBeDefined();
  });
});

function wordsAt(place: TextPlace | undefined): string {
  const lines = (textOf.get(place?.uri ?? '') ?? '').split(/\r?\n/);
  const { start, end } = place?.range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  return lines[start.line]?.slice(start.character, end.line === start.line ? end.character : undefined) ?? '';
}
