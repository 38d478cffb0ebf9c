import { AstUtils, EmptyFileSystem, GrammarAST } from 'langium';
import { describe, expect, it } from 'vitest';
import { createJoineryServices } from '../module.js';
import { wordLine } from './words.js';

describe('the words of the language', () => {
  const { joinery } = createJoineryServices(EmptyFileSystem);
  const words = AstUtils.streamAllContents(joinery.Grammar)
    .filter(GrammarAST.isKeyword)
    .filter(({ value }) => /^[a-z]/i.test(value))
    .map((keyword) => [keyword.value, AstUtils.getContainerOfType(keyword, GrammarAST.isParserRule)?.name ?? ''])
    .toArray();

  it.each(words)('tell what %s means in %s', (word, rule) => {
    expect(wordLine(word, rule)).toMatch(/^`.+`: .+\.$/);
  });
});
