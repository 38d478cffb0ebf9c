import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createJoineryServices } from '@dryfit/language';
import { EmptyFileSystem } from 'langium';
import { describe, expect, test } from 'vitest';
import { root } from '../house/sources.js';
import { atEnter, configuration, indentRules, wordAt } from './configured.js';

const { joinery } = createJoineryServices(EmptyFileSystem);
const files = ['examples', 'packages/extension/example', 'packages/language/src/library'].flatMap((folder) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.joinery'))
    .map((name) => join(folder, name)),
);
const textOf = (file: string) => readFileSync(join(root, file), 'utf8');
const lex = (text: string) => joinery.parser.Lexer.tokenize(text);

describe('words', () => {
  test.each(files)('%s: a double click takes a name or a word of the language as the lexer does', (file) => {
    const text = textOf(file);
    const lines = text.split('\n');
    const wrong = lex(text)
      .tokens.filter(({ image }) => /^[\p{L}_][\p{L}\d_]*$/u.test(image))
      .filter(({ image, startLine = 1, startColumn = 1 }) => {
        const line = lines[startLine - 1] ?? '';
        return [0, image.length - 1].some((at) => wordAt(line, startColumn - 1 + at) !== image);
      })
      .map(({ image, startLine }) => `${startLine}: ${image}`);
    expect(wrong).toEqual([]);
  });

  test.each([
    ['wide = 6|00', '600'],
    ['height 17.|7', '17.7'],
    ['depth 3/|4"', '3/4'],
    ['depth 23 1|/4 in', '23 1/4'],
    ['thickness 1|8mm', '18'],
    ['back.gro|ove.front', 'groove'],
    ['part été|_1 : level', 'été_1'],
    ['from|', 'from'],
    ['{ | }', undefined],
  ])('%s takes %s', (marked, word) => {
    expect(wordAt(marked.replace('|', ''), marked.indexOf('|'))).toBe(word);
  });
});

describe('Enter', () => {
  test.each([
    ['cabinet Rack {|', 'indent', ''],
    ['cabinet Rack {|}', 'indentOutdent', ''],
    ['  butt shelf between lh and rh { |  }', 'indentOutdent', ''],
    ['job Library { 4 of Rack(|', 'indent', ''],
    ['// one |two', 'none', '// '],
    ['  // one |two', 'none', '// '],
    ['/*|*/', 'indentOutdent', ''],
  ])('%s', (line, indent, append) => {
    expect(atEnter(line)).toEqual({ indent, append });
  });

  test.each(['part lh : upright of birch18|', 'flush front }|', '// a remark that is at its end|', 'cabinet Rack |'])(
    '%s keeps the indentation',
    (line) => {
      expect(atEnter(line)).toBeUndefined();
    },
  );
});

describe('indentation', () => {
  test.each(files)('%s is indented as the rules would', (file) => {
    let depth = 0;
    let inside = false;
    const wrong = textOf(file)
      .split('\n')
      .flatMap((line, at) => {
        const indented = line.trim() !== '' && !inside;
        inside = inside ? !line.includes('*/') : /^\s*\/\*(?!.*\*\/)/.test(line);
        if (!indented) return [];
        if (indentRules.shouldDecrease(line)) depth -= 1;
        const wanted = '  '.repeat(depth) + line.trim();
        if (indentRules.shouldIncrease(line)) depth += 1;
        return line === wanted ? [] : [`${at + 1}: ${line}`];
      });
    expect(wrong).toEqual([]);
    expect(depth).toBe(0);
  });

  test.each([
    ['allow thin-wall "a brace { in the reason"', false],
    ['// a remark {', false],
    ['  butt shelf between lh and rh { flush front }', false],
    ['job Library {', true],
  ])('after %s: %s', (line, more) => {
    expect(indentRules.shouldIncrease(line)).toBe(more);
  });
});

describe('brackets and comments', () => {
  const marks = new Set(files.flatMap((file) => lex(textOf(file)).tokens.map(({ image }) => image)));

  test('every bracket of the language is one of the editor, closes itself and can be put round words', () => {
    const used = [...marks].filter((mark) => /^[([{]$/.test(mark)).sort();
    expect(configuration.brackets.map(([open]) => open).sort()).toEqual(used);
    expect(configuration.autoClosingPairs.map(({ open }) => open)).toEqual(expect.arrayContaining(used));
    expect(configuration.surroundingPairs.map(([open]) => open)).toEqual(expect.arrayContaining(used));
    for (const { notIn } of configuration.autoClosingPairs) expect(notIn).toEqual(['string', 'comment']);
  });

  test('an inch mark does not bring a second one along', () => {
    expect(configuration.autoClosingPairs.map(({ open }) => open)).not.toContain('"');
  });

  test.each(files)('%s: lines commented out hold nothing', (file) => {
    const { lineComment, blockComment } = configuration.comments;
    const text = textOf(file);
    const lines = text.split('\n').map((line) => `${lineComment} ${line}`);
    expect(lex(lines.join('\n'))).toMatchObject({ tokens: [], errors: [] });
    const block = `${blockComment[0]} ${text.replaceAll('*/', '')} ${blockComment[1]}`;
    expect(lex(block)).toMatchObject({ tokens: [], errors: [] });
  });

  test('regions fold from their mark to its end', () => {
    const { start, end } = configuration.folding.markers;
    expect(['// region Sides', '  //#region', '// regional'].map((line) => new RegExp(start).test(line))).toEqual([
      true,
      true,
      false,
    ]);
    expect(new RegExp(end).test('  // #endregion')).toBe(true);
  });
});
