import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createJoineryServices } from '@dryfit/language';
import fc from 'fast-check';
import { EmptyFileSystem } from 'langium';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Coloured, tokenizer } from './tokenizer.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const examples = ['examples', 'examples/broken', 'packages/extension/example', 'packages/language/src/library'].flatMap(
  (folder) =>
    readdirSync(join(root, folder))
      .filter((file) => file.endsWith('.joinery'))
      .map((file) => join(folder, file)),
);
const { joinery } = createJoineryServices(EmptyFileSystem);

let colour: (text: string) => readonly Coloured[];
beforeAll(async () => {
  colour = await tokenizer();
});

const scopeAt = (text: string, word: string): string => {
  const at = text.indexOf(word);
  return colour(text).find(({ start, end }) => start <= at && at < end)?.scope ?? '';
};

describe('colours against the lexer', () => {
  test.each(examples)('%s: numbers, strings, comments and words are told apart alike', (file) => {
    const text = readFileSync(join(root, file), 'utf8').replaceAll('\r\n', '\n');
    const found = colour(text);
    const { tokens, hidden } = joinery.parser.Lexer.tokenize(text);
    const wrong = [...tokens, ...hidden]
      .map(({ image, startOffset, tokenType }) => {
        const wanted = wantedScope(tokenType.name, image);
        const scopes = found.filter(({ start, end }) => start < startOffset + image.length && end > startOffset);
        return { image, wanted, scopes: scopes.map(({ scope }) => scope) };
      })
      .filter(({ wanted, scopes }) => wanted && !scopes.every((scope) => wanted.test(scope)));
    expect(wrong).toEqual([]);
  });
});

/** What a token of the lexer is to look like; undefined if it may look like anything. */
function wantedScope(token: string, image: string): RegExp | undefined {
  if (token === 'NUMBER') return /^constant\.numeric/;
  if (token === 'STRING') return /^(string|punctuation)/;
  if (/COMMENT/.test(token)) return /comment/;
  if (/^[=*/+:±-]|^\+\/-$/.test(token)) return /^(keyword\.operator|entity\.name\.function\.check)/;
  // A name is what no word of the language is; where it is given, or allowed, it has the colour of that.
  if (token === 'ID') return /^(source\.joinery|entity\.name)/;
  if (token === 'WS' || !/^\p{L}/u.test(image)) return undefined;
  // A keyword; where it is a name by its place, the server colours it.
  return /^(keyword|storage|constant\.language|support|entity)/;
}

test('every keyword of the grammar is coloured', () => {
  const grammar = readFileSync(join(root, 'packages/language/src/grammar/joinery.langium'), 'utf8');
  const code = grammar.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^(interface|type) [\s\S]*?(\}|;)$/gm, '');
  const words = [...new Set([...code.matchAll(/'([^'\n]+)'/g)].map(([, word]) => word as string))];
  const plain = words.filter((word) => !/^(keyword|storage|constant\.language|support)/.test(scopeAt(word, word)));
  expect(words.length).toBeGreaterThan(100);
  // Marks that hold things together have no colour of their own.
  expect(plain.sort()).toEqual(['(', ')', ',', '.', '{', '}']);
});

test('no other word is coloured', () => {
  const letter = fc.constantFrom(...'abdefhilmnoprstuxyé_27');
  const word = fc.string({ unit: letter, minLength: 1, maxLength: 9 }).filter((text) => !/^\d/.test(text));
  fc.assert(
    fc.property(word, (text) => {
      const [token] = joinery.parser.Lexer.tokenize(text).tokens;
      fc.pre(token?.tokenType.name === 'ID' && token.image === text);
      expect(scopeAt(`${text} `, text)).toBe('source.joinery');
    }),
    { numRuns: 2000 },
  );
});

test.each([
  ['18mm', 'constant.numeric.joinery'],
  ['23 1/4 in', 'constant.numeric.joinery'],
  ['3/4"', 'constant.numeric.joinery'],
  ['17.7', 'constant.numeric.joinery'],
  ['2 1/4"', 'constant.numeric.joinery'],
])('%s is one number with its unit', (number, scope) => {
  const [only, ...more] = colour(number).filter(({ start, end }) => end > start);
  expect([only, more]).toEqual([{ start: 0, end: number.length, scope }, []]);
});

test.each([
  ['allow part-not-fixed "loose"', 'part-not-fixed', 'entity.name.function.check.joinery'],
  ['cabinet Rack {', 'Rack', 'entity.name.type.joinery'],
  ['band front of shelf with edge1', 'front', 'constant.language.side.joinery'],
  ['upright of birch18', 'upright', 'storage.modifier.joinery'],
  ['x = 2 // front', 'front', 'comment.line.joinery'],
  ['import "front.joinery"', 'front', 'string.quoted.double.joinery'],
  ['topmost', 'topmost', 'source.joinery'],
  ['été_in', 'in', 'source.joinery'],
  ['thickness 3/4" measured', 'measured', 'keyword.control.joinery'],
])('%s: %s', (text, word, scope) => {
  expect(scopeAt(text, word)).toBe(scope);
});
