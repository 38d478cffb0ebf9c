import { EmptyFileSystem } from 'langium';
import { describe, expect, it } from 'vitest';
import { createJoineryServices } from '../module.js';

const { joinery } = createJoineryServices(EmptyFileSystem);

/** What is said of a cabinet whose parameter has this value, and the value as it is read, without spaces. */
function read(value: string): { readonly errors: readonly string[]; readonly names: readonly string[] } {
  const { parser } = joinery;
  const text = `cabinet Rack {\n  parameter wide = ${value}\n  parameter high = 720\n}\ncabinet Desk { }\n`;
  const { value: file, lexerErrors, parserErrors } = parser.LangiumParser.parse(text);
  const { entries } = file as unknown as { entries: { name: string }[] };
  return {
    errors: [...lexerErrors, ...parserErrors].map(({ message }) => message),
    names: entries.map(({ name }) => name),
  };
}

const deep = (levels: number, inside = '1') => `${'('.repeat(levels)}${inside}${')'.repeat(levels)}`;
const sum = (signs: number) => `1${' + 1'.repeat(signs)}`;

describe('what an expression may be', () => {
  it.each([
    ['parentheses', deep(30)],
    ['minus signs', `${'-'.repeat(30)}1`],
    ['a sum', sum(200)],
    ['all at once', deep(30, `${'-'.repeat(30)}1 + ${sum(100)}`)],
  ])('reads %s as far as the limit', (_, value) => {
    expect(read(value)).toEqual({ errors: [], names: ['Rack', 'Desk'] });
  });

  it.each([
    [deep(31), /parentheses stand at most 30 deep/],
    [deep(20_000), /parentheses stand at most 30 deep/],
    [`${'-'.repeat(31)}1`, /at most 30 minus signs/],
    [`${'-'.repeat(20_000)}1`, /at most 30 minus signs/],
    [sum(201), /at most 200 signs/],
    [sum(20_000), /at most 200 signs/],
    [`1${'/7'.repeat(20_000)}`, /at most 200 signs/],
    [`(${sum(300)}) * (2 + (3 - 1)) + 1`, /at most 200 signs/],
    [`2 * (1 + (${sum(300)}))`, /at most 200 signs/],
  ])('says one thing of what goes beyond, and reads what follows', (value, message) => {
    const { errors, names } = read(value);
    expect(errors).toEqual([expect.stringMatching(message)]);
    expect(names).toEqual(['Rack', 'Desk']);
  });

  it('counts each expression by itself', () => {
    expect(read(`${sum(150)}\n  parameter deep = ${sum(150)}`).errors).toEqual([]);
  });

  it('is no worse off where parentheses are left open', () => {
    const { errors, names } = read('('.repeat(20_000));
    expect(errors[0]).toMatch(/parentheses stand at most 30 deep/);
    expect(names).toContain('Desk');
  });
});
