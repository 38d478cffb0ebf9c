import { readdirSync, readFileSync } from 'node:fs';
import { AstUtils, GrammarAST, isLeafCstNode, type LeafCstNode } from 'langium';
import { describe, expect, it } from 'vitest';
import { leavesOf } from '../tree/leaves.js';
import { completing, examples, labels } from './completion.fixture.js';

const names = readdirSync(examples).filter((name) => name.endsWith('.joinery'));

const visible = (leaf: LeafCstNode): boolean => isLeafCstNode(leaf) && !leaf.hidden;

/** A word of the language or a name that is used, not one that is given, nor a number or text. */
function isOffered(leaf: LeafCstNode): boolean {
  if (!/^[a-z]/i.test(leaf.text)) return false;
  const source = leaf.grammarSource;
  return GrammarAST.isKeyword(source) || AstUtils.getContainerOfType(source, GrammarAST.isCrossReference) !== undefined;
}

describe('completion', { timeout: 240_000 }, () => {
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
});
