/** Text from a file or a name, so that nothing in it is taken for markup. */
export function plain(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_[\]<>|#~&$]/g, '\\$&')
    .replace(/^([-+=]|\d+[.)])/, '\\$1');
}

/** A word of the language, a name, or a value as it is written in a text. */
export function code(text: string): string {
  return `\`${text.replace(/\s+/g, ' ').replaceAll('`', "'")}\``;
}

/** Lines that stand under each other, as they are. */
export function block(lines: readonly string[]): string {
  const longest = Math.max(2, ...lines.flatMap((line) => [...line.matchAll(/`+/g)].map(([ticks]) => ticks.length)));
  const fence = '`'.repeat(longest + 1);
  return [`${fence}text`, ...lines.map((line) => line.replace(/[\r\n]+/g, ' ')), fence].join('\n');
}

/** A table; its cells are markdown already, a line each. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** Paragraphs, those that say nothing left out. */
export function paragraphs(...texts: readonly (string | undefined)[]): string {
  return texts.filter((text) => text !== undefined && text !== '').join('\n\n');
}

/** A text with the note that it is about an earlier state, where it is. */
export function stale<T extends string | undefined>(
  text: T,
  fitted: { readonly stale: boolean } | undefined,
): T | string {
  if (text === undefined || !fitted?.stale) return text;
  return paragraphs(
    '*Of an earlier text: what stands here now cannot be read yet, or has not been worked out yet.*',
    text,
  );
}
