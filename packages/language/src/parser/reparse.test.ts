import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import {
  type AstNode,
  type CstNode,
  EmptyFileSystem,
  isCompositeCstNode,
  isLeafCstNode,
  type ParseResult,
} from 'langium';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../../engine/src/testing/fixed-first.fixture.js';
import { createJoineryServices } from '../module.js';
import { reparse } from './reparse.js';

const folder = new URL('../../../../examples/', import.meta.url);
const { LangiumParser } = createJoineryServices(EmptyFileSystem).joinery.parser;
const parse = (text: string): ParseResult => LangiumParser.parse(text);

const files = readdirSync(folder).filter((name) => name.endsWith('.joinery'));
const texts = files.map((name) => readFileSync(new URL(name, folder), 'utf8'));
// As in a file of their own, where units and imports stand above all else.
const together = `units mm\nimport "shop.joinery"\n\n${texts.join('\n').replace(/^(?:units|import) .*\n/gm, '')}`;
const several = [together, together.replaceAll('\n', '\r\n'), 'cabinet A { }  cabinet B { }\n\ncabinet C { }'];

/** A syntax tree as data: where every leaf stands and what thing of the text it belongs to. */
function syntax(node: CstNode): unknown {
  const { offset, end, range, text, hidden } = node;
  const { $type } = node.astNode;
  if (isLeafCstNode(node)) return [offset, end, range, text, hidden, $type, node.tokenType.name];
  if (!isCompositeCstNode(node)) throw new Error('neither a leaf nor a composite');
  return [offset, end, range, $type, node.container?.offset, node.content.map(syntax)];
}

/** A tree as data, with the way back from each node to what holds it. */
function tree(node: AstNode): unknown {
  const own = Object.entries(node).filter(([key]) => !key.startsWith('$'));
  const value = (one: unknown): unknown => {
    if (Array.isArray(one)) return one.map(value);
    if (typeof one !== 'object' || one === null) return typeof one === 'bigint' ? `${one}` : one;
    if ('$refText' in one)
      return { name: one.$refText, at: ('$refNode' in one && (one.$refNode as CstNode).offset) || 0 };
    return '$type' in one ? tree(one as AstNode) : JSON.stringify(one);
  };
  const { $type, $container, $containerProperty, $containerIndex, $cstNode } = node;
  return {
    $type,
    in: [$container?.$type, $container?.$cstNode?.end, $containerProperty, $containerIndex],
    at: [$cstNode?.offset, $cstNode?.end],
    ...Object.fromEntries(own.map(([key, one]) => [key, value(one)])),
  };
}

const whole = ({ value }: ParseResult) => ({ tree: tree(value), syntax: value.$cstNode && syntax(value.$cstNode) });

test('after any edits, the tree is the one that reading the whole text gives', () => {
  let taken = 0;
  // Most of what is typed leaves a text that can be read; some of it reaches far beyond where it stands.
  const mild = fc.constantFrom(' ', '\n', '1', 'x', '// a\n', '\r\n', '/* a */');
  const wild = fc.constantFrom('}', '{', '"', '/*', '*/', '// a', 'units in\n', 'cabinet D { }\n', '\r');
  const edit = fc.oneof(
    { weight: 5, arbitrary: fc.record({ put: mild, take: fc.constant(0) }) },
    { weight: 1, arbitrary: fc.record({ put: wild, take: fc.constant(0) }) },
    { weight: 2, arbitrary: fc.record({ put: fc.constant(''), take: fc.constantFrom(1, 2, 3) }) },
  );
  const which = fc.constantFrom(...several);
  const changes = fc.array(fc.tuple(fc.integer({ min: 0, max: 999 }), edit), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(which, changes, (text, edits) => {
      let [now, result] = [text, parse(text)];
      for (const [at, { take, put }] of edits) {
        const place = Math.floor((at * now.length) / 1000);
        const next = now.slice(0, place) + put + now.slice(place + take);
        const again = reparse(result, next, parse);
        if (again) taken += 1;
        const fresh = parse(next);
        if (again) expect(fresh.parserErrors.length + fresh.lexerErrors.length).toBe(0);
        if (again) expect(whole(again)).toEqual(whole(fresh));
        [now, result] = [next, again ?? fresh];
      }
    }),
    fixedFirst({ fixed: 60, numRuns: 120 }, which, changes),
  );
  expect(taken).toBeGreaterThan(10);
});

describe('what is read of a text of several cabinets', () => {
  const text =
    'units mm\ncabinet A {\n  part a : level of x\n}\n\ncabinet B {\n  part b : level of x\n}\n// end\ncabinet C { }\n';
  const read = (now: string) => {
    const parts: string[] = [];
    const result = reparse(parse(text), now, (part) => {
      parts.push(part);
      return parse(part);
    });
    return result && parts;
  };

  test('is the cabinet that somebody types in', () => {
    expect(read(text.replace('part b', 'part bb'))).toEqual(['\n\ncabinet B {\n  part bb : level of x\n}\n// end\n']);
  });

  test.each([
    ['a line of the file as a whole', text.replace('mm', 'in')],
    ['a comment that swallows what follows', text.replace('// end\n', '// end ')],
    ['another cabinet', text.replace('// end', 'cabinet D { }')],
    ['something that cannot be read', text.replace('part b', 'part }')],
    ['a comment that is not closed', text.replace('// end', '/* end')],
  ])('is everything after %s', (_, now) => {
    expect(now).not.toBe(text);
    expect(read(now)).toBeUndefined();
  });
});
