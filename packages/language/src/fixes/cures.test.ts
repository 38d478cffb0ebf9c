import { readFileSync } from 'node:fs';
import { OperationCancelled } from 'langium';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../testing/files.fixture.js';
import { applied, isSound } from './apply.js';
import { curesOf } from './cures.js';
import type { Cure, Fix } from './fix.js';
import { fixes } from './index.js';
import { Trial } from './trial.js';

const shop = readFileSync(new URL('../../../../examples/shop.joinery', import.meta.url), 'utf8');
const text = `import "shop.joinery"

cabinet ReadersDesk {
  part lh, rh : upright of birch18
  part shelf  : level of birch18

  width 400 over lh and rh
  height 300 of lh, rh
  depth 320 of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt shelf between lh and rh {
    bottom 100 above lh.bottom
    flush rear, front
    connect biscuit20 by lines 70, 160, 300
  }
}

job Annexe { 1 of ReadersDesk }
`;

/** The finding that a slot is too near to an edge, and what is offered for it. */
async function offered(own: string, among?: readonly Fix[]) {
  const memory = new FilesInMemory({ 'shop.joinery': shop, 'text.joinery': own });
  const { findings } = await memory.examine('text.joinery');
  const document = memory.document('text.joinery');
  const finding = findings.find(({ code }) => code === 'slot-near-edge');
  if (!document || !finding) throw new Error('nothing is found');
  const { joinery } = memory.services;
  const cures = await curesOf(finding, document, joinery, new Trial(joinery), { among });
  return cures.map((cure) => ({ ...cure, text: applied(own, document.uri.toString(), cure.edits) }));
}

/** A fix that puts one text in the place of another. */
const writing = (before: string, after: string, more: Partial<Fix> = {}): Fix => ({
  name: 'writing',
  codes: ['slot-near-edge'],
  *offer({ document }): Iterable<Cure> {
    const start = document.textDocument.getText().indexOf(before);
    yield {
      title: after,
      edits: [{ uri: document.uri.toString(), start, end: start + before.length, text: after }],
      preferred: true,
    };
  },
  ...more,
});

test('a cure is offered that cures', async () => {
  const [cure] = await offered(text, [writing('160, 300', '160, 250')]);
  expect(cure?.text).toContain('lines 70, 160, 250');
});

test.each([
  ['does not cure', '160, 300', '160, 299'],
  ['cures by breaking the text', 'lines 70, 160, 300', 'lines 70, 160, '],
  ['brings something else about', '70, 160, 300', '40, 160, 250'],
])('none is offered that %s', async (_, before, after) => {
  expect(await offered(text, [writing(before, after)])).toEqual([]);
});

test('what a fix says may follow does not keep it back', async () => {
  const short = writing('lines 70, 160, 300', 'lines 160');
  expect(await offered(text, [short])).toEqual([]);
  expect(await offered(text, [{ ...short, mayFollow: { 'joint-can-rotate': 'one line is left' } }])).toHaveLength(1);
});

test('at most one cure of a finding is the one to take', async () => {
  const two = [writing('160, 300', '160, 250'), writing('160, 300', '160, 240')];
  expect((await offered(text, two)).map(({ preferred }) => preferred)).toEqual([true, false]);
});

test('what a job’s line brings about is cured in the cabinet', async () => {
  const fine = text
    .replace('160, 300', '160, 250')
    .replace('depth 320', 'depth deep')
    .replace('  part lh', '  parameter deep = 320\n  part lh');
  const narrow = fine.replace('1 of ReadersDesk', '1 of ReadersDesk(deep = 280)');
  const cures = await offered(narrow);
  expect(cures.map(({ fix }) => fix.name)).toContain('allow');
  for (const cure of cures) expect(cure.text).toContain('1 of ReadersDesk(deep = 280)');
});

describe('a cure that changes a file that others draw on', () => {
  const patterns = 'import "shop.joinery"\npattern three { lines 70, 160, 300 }\n';
  const drawing = text.replace('shop.joinery', 'patterns.joinery').replace('lines 70, 160, 300', 'three');
  const files = {
    'shop.joinery': shop,
    'patterns.joinery': patterns,
    'text.joinery': drawing,
    'other.joinery': drawing.replaceAll('ReadersDesk', 'Lectern').replace('depth 320', 'depth 420'),
    'apart.joinery': text.replace('lines 70, 160, 300', 'lines 70, 160, 250'),
  };

  async function offeredWith(...open: readonly string[]) {
    const memory = new FilesInMemory(files);
    for (const name of open) expect((await memory.examine(name)).findings).toEqual([]);
    const { findings } = await memory.examine('text.joinery');
    const documents = ['text.joinery', ...open].flatMap((name) => memory.document(name) ?? []);
    const [document] = documents;
    const finding = findings.find(({ code }) => code === 'slot-near-edge');
    if (!document || !finding) throw new Error('nothing is found');
    const uri = memory.document('patterns.joinery')?.uri.toString() ?? '';
    const at = patterns.indexOf('three');
    /** Gives the pattern other lines, and another name that only the text at hand goes along with. */
    const renaming = writing('by three', 'by four', {
      *offer(about) {
        for (const cure of writing('by three', 'by four').offer(about))
          yield {
            ...cure,
            edits: [...cure.edits, { uri, start: at, end: patterns.length, text: 'four { lines 70, 160, 250 }\n' }],
          };
      },
    });
    const { joinery } = memory.services;
    const cures = await curesOf(finding, document, joinery, new Trial(joinery), { among: [renaming], open: documents });
    return cures.length;
  }

  test('is offered where nobody looks at the others', async () => expect(await offeredWith()).toBe(1));
  test('is offered where the others draw on something else', async () =>
    expect(await offeredWith('apart.joinery')).toBe(1));
  test('is not offered where it breaks another that is open', async () =>
    expect(await offeredWith('other.joinery')).toBe(0));
});

test('a search that is over finds nothing', async () => {
  const memory = new FilesInMemory({ 'shop.joinery': shop, 'text.joinery': text });
  const { findings } = await memory.examine('text.joinery');
  const [document, finding] = [memory.document('text.joinery'), findings[0]];
  if (!document || !finding) throw new Error('nothing is found');
  const { joinery } = memory.services;
  let asked = 0;
  const isOver = () => ++asked > 2;
  await expect(curesOf(finding, document, joinery, new Trial(joinery), { isOver })).rejects.toBe(OperationCancelled);
  expect(asked).toBe(3);
});

test('every fix has a name of its own', () => {
  const names = fixes.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});

test('edits that lie within one another are not made together', () => {
  const edit = (start: number, end: number) => ({ uri: 'a', start, end, text: 'x' });
  expect(isSound([edit(0, 4), edit(4, 6)])).toBe(true);
  expect(isSound([edit(0, 4), edit(3, 6)])).toBe(false);
  expect(applied('abcdef', 'a', [edit(4, 6), edit(0, 1), { ...edit(2, 2), text: 'y' }])).toBe('xbycdx');
});
