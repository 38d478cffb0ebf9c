import type { AstNode } from 'langium';

/**
 * What is written about a thing: the comment behind it on its last line, else the comment on the lines right above
 * it. Signs of comments are left out; undefined where nothing is written.
 */
export function commentAbout(node: AstNode): string | undefined {
  const { $cstNode: cst } = node;
  if (cst === undefined) return undefined;
  const text = cst.root.fullText;
  return behind(text.slice(cst.end)) ?? above(text.slice(0, cst.offset));
}

function behind(after: string): string | undefined {
  const [, line, block] = /^[ \t]*(?:\/\/([^\r\n]*)|\/\*((?:(?!\*\/)[^\r\n])*)\*\/[ \t]*(?=\r|\n|$))/.exec(after) ?? [];
  return cleaned([line ?? block ?? '']);
}

function above(before: string): string | undefined {
  if (/\S[ \t]*$/.test(before.slice(before.lastIndexOf('\n') + 1))) return undefined;
  const lines = before.split(/\r\n|\r|\n/).slice(0, -1);
  const found: string[] = [];
  while (/^\s*\/\//.test(lines.at(-1) ?? '')) found.unshift((lines.pop() as string).replace(/^\s*\/\/+/, ''));
  if (found.length > 0) return cleaned(found);
  if (!/\*\/[ \t]*$/.test(lines.at(-1) ?? '')) return undefined;
  const text = lines.join('\n');
  const start = text.lastIndexOf('/*');
  return cleaned(
    text
      .slice(start + 2, text.lastIndexOf('*/'))
      .split('\n')
      .map((line) => line.replace(/^\s*\*/, '')),
  );
}

function cleaned(lines: readonly string[]): string | undefined {
  const text = lines
    .map((line) => line.trim())
    .join('\n')
    .trim();
  return text === '' ? undefined : text;
}
