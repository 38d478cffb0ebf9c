import { TextDocument } from 'langium';
import { afterEach, describe, expect, test } from 'vitest';
import type { CodeAction, Diagnostic, TextDocumentEdit } from 'vscode-languageserver-protocol';
import { connect, example, exampleUri } from './client.fixture.js';

type Client = Awaited<ReturnType<typeof connect>>;

const NAME = 'periodicals.joinery';
const sound = example(NAME);
/** A setback that no stack of spacers makes. */
const off = (by: number) => sound.replace('rear set back 16', `rear set back ${by}`);
const MAKES_FILES = {
  workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['create' as const] } },
};

const clients: Client[] = [];
afterEach(() => Promise.all(clients.splice(0).map((client) => client.end())));
async function started(...given: Parameters<typeof connect>): Promise<Client> {
  const client = await connect(...given);
  clients.push(client);
  return client;
}

/** What is offered where some words of a text stand. */
function offered(client: Client, text: string, words: string, context: object = {}, name = NAME) {
  const start = TextDocument.create('', '', 0, text).positionAt(text.indexOf(words));
  const asked = { range: { start, end: start }, context: { diagnostics: [], ...context } };
  return client.ask<CodeAction[]>('textDocument/codeAction', name, asked);
}

const titles = (actions: readonly CodeAction[]) => actions.map(({ title }) => title);
const after = (text: string, { edit }: CodeAction, name = NAME) =>
  TextDocument.applyEdits(TextDocument.create('', '', 0, text), edit?.changes?.[exampleUri(name)] ?? []);

describe('asked in one go with an edit, cures are those of the edited text', () => {
  const stale: Diagnostic = {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } },
    code: 'unknown-name',
    message: 'told of an earlier text',
  };

  test.each([
    ['no findings told yet', []],
    ['findings told of an earlier text', [stale]],
  ])('with %s', async (_, diagnostics) => {
    const client = await started();
    await client.type(NAME, sound);
    for (const by of [17, 18.3, 17.6]) {
      const text = off(by);
      void client.type(NAME, text);
      const [first] = await offered(client, text, 'butt shelf', { diagnostics });
      expect(first?.title).toBe(`Cut a block ${by + 6} wide for this joint: spacer cut`);
      expect(first?.diagnostics).toEqual([]);
    }
  });

  test('in a burst of keys, the last one', async () => {
    const client = await started();
    await client.type(NAME, sound);
    for (const by of [17, 18, 19, 20, 21, 18.3]) void client.type(NAME, off(by));
    const actions = await offered(client, off(18.3), 'butt shelf');
    expect(titles(actions)[0]).toBe('Cut a block 24.3 wide for this joint: spacer cut');
  });

  test('in a file that was opened a moment ago', async () => {
    const client = await started();
    void client.type(NAME, off(17));
    expect((await offered(client, off(17), 'butt shelf')).length).toBeGreaterThan(1);
  });

  test('and the same again, asked of a text that has stayed', async () => {
    const client = await started();
    await client.type(NAME, off(17));
    const [once, again] = [await offered(client, off(17), 'butt shelf'), await offered(client, off(17), 'butt shelf')];
    expect(titles(again)).toEqual(titles(once));
  });
});

describe('a file that an import names and that is not there', () => {
  const text = sound.replace('import "shop.joinery"', 'import "lindwell.joinery"');

  test('is made with a list of what is taken from it', async () => {
    const client = await started({}, MAKES_FILES);
    await client.type(NAME, text);
    const create = (await offered(client, text, '"lindwell')).find(({ title }) => title === 'Create lindwell.joinery');
    const [file, first, ...more] = create?.edit?.documentChanges ?? [];
    const uri = exampleUri('lindwell.joinery');
    expect(file).toEqual({ kind: 'create', uri, options: { overwrite: false, ignoreIfExists: false } });
    expect(more).toEqual([]);
    const { textDocument, edits } = first as TextDocumentEdit;
    expect(textDocument.uri).toBe(uri);
    const made = (edits[0] as { newText: string }).newText;
    expect(made).toMatch(/^units mm\n/);
    for (const [, name] of sound.matchAll(/\bof (birch\d+)/g)) expect(made).toContain(`material ${name}\n`);
    // With the text that was made for it, the file can be read.
    await client.type('lindwell.joinery', made);
    expect(client.states.findLast(({ uri: one }) => one === uri)).toMatchObject({ errors: 0 });
  });

  test('is not offered to a client that makes no files, nor where no file of cabinets is named', async () => {
    const plain = await started();
    await plain.type(NAME, text);
    expect(titles(await offered(plain, text, '"lindwell')).filter((title) => title.startsWith('Create'))).toEqual([]);
    const client = await started({}, MAKES_FILES);
    const broken = sound.replace('import "shop.joinery"', 'import "../README.md"');
    await client.type(NAME, broken);
    expect(titles(await offered(client, broken, '"../README')).filter((title) => title.startsWith('Create'))).toEqual(
      [],
    );
  });
});

describe('all safe fixes at once', () => {
  const ALL = { only: ['source.fixAll'] };
  // A warning whose cure moves the shelf; while a cabinet has errors, nothing is said to have no effect.
  const uneven = sound
    .replace(
      'import "shop.joinery"',
      '$&\njig coarse { bed 900  fences left, right  stop 0 to 760 step 10  spacers 6, 10, 12, 19, 25 within 0.2 }',
    )
    .replace('bottom 350', 'bottom 352');
  const cluttered = uneven.replace(
    /\n}\n/,
    '\n  allow slot-near-edge "nothing is found"\n  allow thin-wall "nor here"\n}\n',
  );

  test('takes out what has no effect, and leaves what changes a cut', async () => {
    const client = await started();
    await client.type(NAME, cluttered);
    const [all, ...more] = await offered(client, cluttered, 'cabinet', ALL);
    expect([all?.title, all?.kind, more]).toEqual(['Make all 2 safe fixes', 'source.fixAll.dryfit', []]);
    expect(all && after(cluttered, all)).toBe(uneven);
  });

  test('is not offered where nothing is safe, nor to whoever asks for everything', async () => {
    const client = await started();
    await client.type(NAME, uneven);
    expect(await offered(client, uneven, 'cabinet', ALL)).toEqual([]);
    expect(titles(await offered(client, uneven, 'butt shelf'))).toContainEqual(expect.stringContaining('350'));
    await client.type(NAME, cluttered);
    const kinds = (await offered(client, cluttered, 'allow slot-near-edge')).map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(['quickfix']));
  });
});
