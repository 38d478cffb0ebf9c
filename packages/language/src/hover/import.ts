import type { File, Import } from '../generated/ast.js';
import { LIBRARY_SCHEME } from '../library/library.js';
import type { Knowledge } from './knowledge.js';
import { code, paragraphs, plain } from './markdown.js';

/** More names of a kind than this are counted. */
const MOST = 12;

/** What an import brings: the names of the file, kind by kind, and the files that it imports itself. */
export function importHover(line: Import, knowledge: Knowledge): string | undefined {
  if (line.path === undefined) return undefined;
  const file = knowledge.imported(line);
  const library = line.path.startsWith(`${LIBRARY_SCHEME}:`) ? ': comes with the language' : '';
  if (file === undefined) return `**${plain(line.path)}** cannot be read`;
  const further = file.imports.map(({ path }) => code(path ?? '')).join(', ');
  return paragraphs(
    `**${plain(line.path)}**${library}`,
    namesOf(file) || 'There is nothing in it.',
    further === '' ? '' : `and what it imports itself: ${further}`,
  );
}

function namesOf({ entries }: File): string {
  const kinds = new Map<string, string[]>();
  for (const entry of entries) {
    const names = kinds.get(entry.$type) ?? [];
    names.push('name' in entry && entry.name !== undefined ? entry.name : '');
    kinds.set(entry.$type, names);
  }
  return [...kinds].map(([kind, names]) => `- ${kind.toLowerCase()} ${listed(names)}`.trimEnd()).join('\n');
}

function listed(names: readonly string[]): string {
  const shown = names
    .slice(0, MOST)
    .filter((name) => name !== '')
    .map(code);
  return `${shown.join(', ')}${names.length > MOST ? ` and ${names.length - MOST} more` : ''}`;
}
