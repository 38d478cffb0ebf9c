import { expect, test } from 'vitest';
import { examineOne } from '../support/read.js';
import { readme } from './blocks.js';

/** The first column of the table of a shop's entries. */
const entries = readme
  .split('\n')
  .flatMap(
    (line) =>
      /^\| `((?:material|band|machine|connector|pattern|jig|pose|limits)[\w :]* \{.*?\})` \|/.exec(line)?.[1] ?? [],
  );

test('the entries of a shop that the README shows make a shop', async () => {
  const kinds = new Set(entries.map((entry) => entry.split(' ')[0]));
  expect([...kinds]).toEqual(['material', 'band', 'machine', 'connector', 'pattern', 'jig', 'pose', 'limits']);
  const { findings } = await examineOne('shop.joinery', { 'shop.joinery': `units mm\n${entries.join('\n')}\n` });
  expect(findings.map(({ code, message }) => [code, ...message])).toEqual([]);
});
