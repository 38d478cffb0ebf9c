import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { CabinetItem } from '../../generated/ast.js';
import type { Case, FileEdit } from '../fix.js';

/** The statement of the cabinet that holds a stretch of its text. */
export function itemAt({ cabinet }: Case, { start, end }: { readonly start: number; readonly end: number }) {
  return cabinet?.items.find(({ $cstNode: cst }) => cst !== undefined && cst.offset <= start && end <= cst.end);
}

/** The statement a finding is about, or any statement by its id. */
export function statementOf(about: Case, id = about.finding.about.statement): CabinetItem | undefined {
  const source = about.result?.spec.statements.find((statement) => statement.id === id)?.source;
  return source && itemAt(about, source);
}

/** The document a node stands in. */
export const documentOf = (node: AstNode): LangiumDocument => AstUtils.getDocument(node);

export const textIn = (document: LangiumDocument): string => document.textDocument.getText();

/** Puts a text in the place of a node. */
export function instead(node: AstNode, text: string): FileEdit {
  const { offset = 0, end = 0 } = node.$cstNode ?? {};
  return { uri: documentOf(node).uri.toString(), start: offset, end, text };
}

/** Takes a node out, with its line if it stands alone on it, else with the blanks before it. */
export function without(node: AstNode): FileEdit {
  const document = documentOf(node);
  const text = textIn(document);
  const { offset = 0, end = 0 } = node.$cstNode ?? {};
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const behind = /^[ \t]*(\r?\n|$)/.exec(text.slice(end))?.[0];
  const alone = behind !== undefined && text.slice(lineStart, offset).trim() === '';
  if (alone) return { uri: document.uri.toString(), start: lineStart, end: end + behind.length, text: '' };
  const blanks = /[ \t]*$/.exec(text.slice(lineStart, offset))?.[0].length ?? 0;
  return { uri: document.uri.toString(), start: offset - blanks, end, text: '' };
}

/** The blanks a line begins with. */
export function indentAt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(text.slice(start))?.[0] ?? '';
}

/** How lines of a text end. */
export const lineEnd = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
