import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type AstNode, EmptyFileSystem } from 'langium';
import { createJoineryServices } from '../module.js';
import { formatText } from './format.js';
import { cut, readerOf } from './pieces.js';

const folder = fileURLToPath(new URL('../../../../examples/', import.meta.url));
const { joinery } = createJoineryServices(EmptyFileSystem);

export const reader = readerOf(joinery);
export const format = (text: string): string => formatText(text, reader);

/** The examples' texts by name. */
export const examples: ReadonlyMap<string, string> = new Map(
  readdirSync(folder)
    .filter((name) => name.endsWith('.joinery'))
    .map((name) => [name, readFileSync(folder + name, 'utf8')]),
);

/** What a text says: its tree without places. */
export function meaning(text: string): string {
  const { value, parserErrors, lexerErrors } = reader.parse(text);
  return JSON.stringify([plain(value), parserErrors.length, lexerErrors.length], undefined, 1);
}

/** Its comments, white space folded. */
export function comments(text: string): string[] {
  return cut(text, reader)
    .pieces.filter(({ kind }) => kind.endsWith('comment'))
    .map((piece) => piece.text.replace(/\s+/g, ' ').trim());
}

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  if ('$refText' in value) return value.$refText;
  return Object.fromEntries(
    Object.entries(value as AstNode)
      .filter(([key]) => !key.startsWith('$') || key === '$type')
      .map(([key, inner]) => [key, key === 'text' ? String(inner).replace(/\s+/g, ' ') : plain(inner)]),
  );
}
