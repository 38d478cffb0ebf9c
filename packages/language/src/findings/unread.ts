import type { Finding } from '@dryfit/engine';
import type { Cabinet } from '../generated/ast.js';

/** A stretch of a text, `end` exclusive. */
interface Stretch {
  readonly start: number;
  readonly end: number;
}

/**
 * The words that the statements of a cabinet which do not count may have been about: all that stands in no statement
 * that was read as it was meant. A statement that uses a value declared there is one of them.
 * @param unread findings that say of a statement that it does not count
 */
export function unreadWords(cabinet: Cabinet, text: string, unread: readonly Finding[]): ReadonlySet<string> {
  const items = cabinet.items.flatMap((item) =>
    item.$cstNode ? [{ item, start: item.$cstNode.offset, end: item.$cstNode.end }] : [],
  );
  const { offset = 0, end = 0 } = cabinet.$cstNode ?? {};
  const counts = items.filter(
    (item) => !unread.some((finding) => isIn(finding, item) || isOnLineOf(finding, item, text)),
  );
  const meant = unread.flatMap(({ data }) => (typeof data?.instead === 'string' ? data.instead : []));
  const words = new Set<string>(meant);
  let at = offset;
  for (const item of [...counts, { start: end, end }]) {
    for (const word of wordsOf(text.slice(at, item.start))) words.add(word);
    at = Math.max(at, item.end);
  }
  const unknown = unknownValues(
    items.flatMap(({ item, start, end }) =>
      item.$type === 'Parameter'
        ? [{ name: item.name, words: wordsOf(text.slice(start, end)), counts: counts.some((one) => one.item === item) }]
        : [],
    ),
  );
  for (const { start, end } of unknown.size > 0 ? counts : []) {
    const own = wordsOf(text.slice(start, end));
    if (own.some((word) => unknown.has(word))) for (const word of own) words.add(word);
  }
  return words;
}

interface Value {
  readonly name: string;
  readonly words: readonly string[];
  readonly counts: boolean;
}

/** The parameters that do not count, and those whose values rest on them. */
function unknownValues(values: readonly Value[]): ReadonlySet<string> {
  const unknown = new Set(values.filter(({ counts }) => !counts).map(({ name }) => name));
  for (let before = -1; before < unknown.size; ) {
    before = unknown.size;
    for (const { name, words } of values) if (words.some((word) => unknown.has(word))) unknown.add(name);
  }
  return unknown;
}

/** A name that stands for nothing is told where it stands first, and is as unknown wherever it stands again. */
function isIn({ code, source, related }: Finding, { start, end }: Stretch): boolean {
  const places = code === 'unknown-name' ? [source, ...related.map((other) => other.source)] : [source];
  return places.some((place) => start <= place.start && place.end <= end);
}

/** What could not be read may take words of the same line along, which then look like another statement. */
function isOnLineOf({ code, source }: Finding, { start, end }: Stretch, text: string): boolean {
  if (code !== 'syntax') return false;
  const from = text.lastIndexOf('\n', source.start - 1) + 1;
  const to = text.indexOf('\n', source.start);
  return start < (to < 0 ? text.length : to) && end > from;
}

/** The words of a stretch of text that is no comment. */
function wordsOf(text: string): readonly string[] {
  return text.replace(/\/\/[^\n]*|\/\*[\s\S]*?\*\//g, ' ').match(/[\p{L}\p{N}_]+/gu) ?? [];
}
