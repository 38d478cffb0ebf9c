import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { AstUtils, GrammarAST, isLeafCstNode, type LeafCstNode } from 'langium';
import { describe, expect, it, vi } from 'vitest';
import { CompletionItemKind } from 'vscode-languageserver-protocol';
import { leavesOf } from '../tree/leaves.js';
import { completing, examples, labels } from './completion.fixture.js';
import type { JoineryCompletionProvider } from './completion-provider.js';

const names = readdirSync(examples).filter((name) => name.endsWith('.joinery'));

const visible = (leaf: LeafCstNode): boolean => isLeafCstNode(leaf) && !leaf.hidden;

/** A word of the language or a name that is used, not one that is given, nor a number or text. */
function isOffered(leaf: LeafCstNode): boolean {
  if (!/^[a-z]/i.test(leaf.text)) return false;
  const source = leaf.grammarSource;
  return GrammarAST.isKeyword(source) || AstUtils.getContainerOfType(source, GrammarAST.isCrossReference) !== undefined;
}

/** How a text may go on: a word is read for what it is by what follows, and a reader looks up to three words ahead. */
const GOES_ON = [
  ...[' 1', ' .', '.cant', ' x', ' "x"', ' {', ' 1 {', ' : ', ' = 1', ' top', ' and x', ' , x', ' of x', ' with x'],
  ...[
    ' 1 over x',
    ' 1 minus 1',
    ' 1 from x',
    ' back 1',
    ' between x',
    ' in thickness',
    ' equal between x',
    ' reference',
  ],
  ...[
    ' to centre 1',
    ' along 1',
    ' beside slot',
    ' under slot',
    ' to edge',
    ' slots reference',
    ' at most',
    ' within 1',
  ],
  ...[' front of x', ' of x.top', ' tenon {', ' the run', ' out 1', ' cut', ' banding', ' 1 .', ' last 1', ' 1 last 1'],
];

describe('completion', () => {
  it.each(names)('offers each word of %s where it stands, and it is the end of the text', async (name) => {
    const text = readFileSync(new URL(name, examples), 'utf8');
    const { type, offered } = await completing();
    const whole = await type(text);
    const leaves = [...leavesOf(whole.parseResult.value.$cstNode)].filter(visible);
    const missing: string[] = [];
    let seen = 0;
    for (const leaf of leaves.filter(isOffered)) {
      const cut = await type(text.slice(0, leaf.offset));
      const found = labels(await offered(cut, leaf.offset));
      seen += 1;
      if (!found.includes(leaf.text))
        missing.push(`${text.slice(Math.max(0, leaf.offset - 40), leaf.offset)}|${leaf.text}: ${found.slice(0, 12)}`);
    }
    expect(missing).toEqual([]);
    expect(seen).toBeGreaterThan(20);
  });

  it.each(names)('offers for %s nothing that cannot be read where it is put', async (name) => {
    const text = readFileSync(new URL(name, examples), 'utf8');
    const { type, offered, joinery } = await completing();
    const whole = await type(text);
    const wrong: string[] = [];
    let tried = 0;
    // Where a brace stands first on its line, what is put before it is held to be outside by where it stands.
    const places = [...leavesOf(whole.parseResult.value.$cstNode)].filter(visible).filter(({ text }) => text !== '}');
    for (const leaf of places) {
      const cut = await type(text.slice(0, leaf.offset));
      for (const { label, kind, textEdit } of await offered(cut, leaf.offset)) {
        if (textEdit === undefined || !('range' in textEdit)) throw new Error(`${label} has no place`);
        const put =
          cut.textDocument.getText().slice(0, cut.textDocument.offsetAt(textEdit.range.start)) + textEdit.newText;
        tried += 1;
        const readsOn = (more: string) =>
          joinery.parser.LangiumParser.parse(put + more).parserErrors.every(
            ({ token }) => token.image === '' || !(token.startOffset < put.length - 1),
          );
        if (!(kind === CompletionItemKind.Struct ? [''] : GOES_ON).some(readsOn))
          wrong.push(`${put.slice(-60)} (${label})`);
      }
    }
    expect(wrong).toEqual([]);
    expect(tried).toBeGreaterThan(200);
  });

  it.each(names)('offers each word of %s where it stands in the whole text', async (name) => {
    const text = readFileSync(new URL(name, examples), 'utf8');
    const { type, offered } = await completing();
    const whole = await type(text);
    const missing: string[] = [];
    for (const leaf of [...leavesOf(whole.parseResult.value.$cstNode)].filter(visible).filter(isOffered)) {
      const found = labels(await offered(whole, leaf.offset));
      if (!found.includes(leaf.text))
        missing.push(`${text.slice(Math.max(0, leaf.offset - 40), leaf.offset)}|${leaf.text}: ${found.slice(0, 12)}`);
    }
    expect(missing).toEqual([]);
  });

  it('answers at any place of any broken text', async () => {
    const texts = names.map((name) => readFileSync(new URL(name, examples), 'utf8'));
    const { type, offered } = await completing();
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...texts), fc.nat(), fc.nat(60), fc.nat(), async (text, from, length, place) => {
        const start = from % text.length;
        const broken = text.slice(0, start) + text.slice(start + length);
        const items = await offered(await type(broken), place % (broken.length + 1));
        expect(new Set(items.map(({ kind, label }) => `${kind} ${label}`)).size).toBe(items.length);
      }),
      { numRuns: 60 },
    );
  });

  it('works nothing out', async () => {
    const text = readFileSync(new URL('periodicals.joinery', examples), 'utf8');
    const { type, offered, joinery } = await completing();
    await type(text);
    const places = ['connect |', 'connect biscuit20 by |', 'allow |', '|', 'rear against |'];
    const cut = await Promise.all(
      places
        .map((typed) => text.replace('bottom 350 above base.bottom', typed))
        .map(async (one) => [one, await type(one.replace('|', ''))] as const),
    );
    const worked = vi.spyOn(joinery.joinery.Fits, 'of');
    for (const [one, document] of cut) expect((await offered(document, one.indexOf('|'))).length).toBeGreaterThan(3);
    expect(worked).not.toHaveBeenCalled();
  });

  it('says of a name that is looked at what a hover says of it', async () => {
    const text = readFileSync(new URL('periodicals.joinery', examples), 'utf8');
    const { at, type, joinery } = await completing();
    const typed = text.replace('bottom 350 above base.bottom', 'connect |');
    const items = await at(typed, text);
    const provider = joinery.lsp.CompletionProvider as JoineryCompletionProvider;
    const document = await type(typed.replace('|', ''));
    const told = (label: string) =>
      items.filter((item) => item.label === label).map((item) => provider.resolve(item, document));
    expect(told('biscuit20')[0]?.documentation).toMatchObject({
      kind: 'markdown',
      value: expect.stringContaining('**biscuit20**: connector\n\n- kind biscuit'),
    });
    const [shelf] = (await at(text.replace('butt shelf', 'butt |\n  butt shelf'), text)).filter(
      ({ label }) => label === 'shelf',
    );
    const of = shelf && provider.resolve(shelf, await type(text));
    expect(of?.documentation).toMatchObject({ value: expect.stringContaining('Finished 564.6 × 538 × 17.7 mm') });
  });
});
