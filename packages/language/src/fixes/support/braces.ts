import type { AstNode } from 'langium';
import type { Cabinet } from '../../generated/ast.js';
import type { FileEdit } from '../fix.js';
import { documentOf, indentAt, lineEnd, textIn } from './place.js';

const STEP = '  ';

/** Writes lines into the braces of a statement or entry, and the braces if it has none. */
export function writeInto(node: AstNode, ...lines: readonly string[]): FileEdit {
  const document = documentOf(node);
  const text = textIn(document);
  const uri = document.uri.toString();
  const { offset = 0, end = 0 } = node.$cstNode ?? {};
  const at = (start: number, now: string): FileEdit => ({ uri, start, end: start, text: now });
  const line = lines.join('  ');
  if (text[end - 1] !== '}') return at(end, ` { ${line} }`);
  const eol = lineEnd(text);
  const before = text.slice(0, end - 1);
  const blanks = /\s*$/.exec(before)?.[0] ?? '';
  const last = end - 1 - blanks.length;
  const open = text[last - 1] === '{';
  const oneLine = !text.slice(offset, end).includes('\n');
  if (oneLine) return { uri, start: last, end: end - 1, text: `${open ? ' ' : '  '}${line} ` };
  const indent = indentAt(text, offset);
  const own = open ? `${indent}${STEP}` : indentAt(text, last - 1);
  // Behind the last line, comment and all.
  const all = lines.map((one) => `${eol}${own}${one}`).join('');
  const whole = blanks.includes('\n') ? all : `${all}${eol}${indent}`;
  return at(last, whole);
}

/** Writes a statement on a line of its own behind another. */
export function writeAfter(node: AstNode, line: string): FileEdit {
  const document = documentOf(node);
  const text = textIn(document);
  const { offset = 0, end = 0 } = node.$cstNode ?? {};
  const rest = text.slice(end);
  const comment = /^[ \t]*\/\/[^\r\n]*/.exec(rest)?.[0] ?? '';
  const start = end + comment.length;
  const oneLine = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset).trim() !== '';
  const behind = oneLine ? `  ${line}` : `${lineEnd(text)}${indentAt(text, offset)}${line}`;
  // What follows on the same line stays behind the new one.
  return { uri: document.uri.toString(), start, end: start, text: behind };
}

/** Writes a statement at the end of a cabinet. */
export const writeInCabinet = (cabinet: Cabinet, line: string): FileEdit => {
  const last = cabinet.items.at(-1);
  return last ? writeAfter(last, line) : writeInto(cabinet, line);
};
