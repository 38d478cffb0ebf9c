import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/sources.js';

/** A fenced block of the README: its language, its text, and the paragraph that stands before it. */
export interface Block {
  readonly language: string;
  readonly text: string;
  readonly before: string;
}

export const readme = readFileSync(join(root, 'README.md'), 'utf8');

/** The fenced blocks of a language, in their order. */
export function blocks(language: string): readonly Block[] {
  const fenced = /([^\n]*)\n+```(\w+)\n([\s\S]*?)^```$/gm;
  return [...readme.matchAll(fenced)]
    .map(([, before = '', name = '', text = '']) => ({ language: name, text, before }))
    .filter((block) => block.language === language);
}
