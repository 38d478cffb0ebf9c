import { type Finding, UNUSED_SILENCE } from '@dryfit/engine';
import { missingImport } from '../checks/missing-import.js';
import { type Cabinet, type File, isCabinet } from '../generated/ast.js';
import { unreadWords } from './unread.js';

/** Findings that mean that a statement, or a part of it, does not count. */
export const UNREAD: readonly string[] = [
  'against-same-way',
  'flush-sides-differ',
  'no-such-part',
  'no-such-plane',
  'offset-count',
  'one-part-wanted',
  'parameter-cycle',
  'syntax',
  'unit-mismatch',
  'unknown-name',
  'wrong-side',
];

/** What the statement that does not count may have said of a part it names, so that nobody knows whether it is missing. */
const MISSING: readonly string[] = ['part-not-fixed', 'part-unattached'];
/** What a fact that does not count may have said of its own joint. */
const MISSING_IN_JOINT: readonly string[] = ['fact-missing', 'no-connectors', 'reference-missing'];

/**
 * Leaves out what is found only because something else is: sizes that an unread statement may fix, what is allowed and
 * not found while the cabinet is wrong, and all but one of the findings about a part that nothing mentions. In each
 * case an error about the same cabinet stays.
 */
export function withoutFollowOns(file: File, text: string, findings: readonly Finding[]): readonly Finding[] {
  const dropped = new Set<Finding>();
  const broken = findings.some(({ code }) => code === missingImport.code);
  for (const cabinet of file.entries.filter(isCabinet)) {
    const own = findings.filter((finding) => isIn(finding, cabinet, file));
    const unread = own.filter(({ code }) => UNREAD.includes(code));
    if (unread.length > 0) {
      const words = unreadWords(cabinet, text, unread);
      for (const finding of own) if (mayBeSaidBy(unread, words, finding, cabinet, text)) dropped.add(finding);
    }
    for (const finding of saidOtherwise(own)) dropped.add(finding);
    // What is allowed may be found again once the text is right: nobody should be told to take the line out.
    if (broken || own.some(({ severity }) => severity === 'error'))
      for (const finding of own) if (finding.code === UNUSED_SILENCE) dropped.add(finding);
  }
  return dropped.size === 0 ? findings : findings.filter((finding) => !dropped.has(finding));
}

const isIn = ({ source: { uri, start, end } }: Finding, { $cstNode: cst }: Cabinet, file: File): boolean =>
  uri === file.$document?.uri.toString() && cst !== undefined && cst.offset <= start && end <= cst.end;

function mayBeSaidBy(
  unread: readonly Finding[],
  words: ReadonlySet<string>,
  finding: Finding,
  cabinet: Cabinet,
  text: string,
): boolean {
  const { code, source } = finding;
  if (MISSING.includes(code)) return (finding.about.parts ?? []).some((id) => words.has(kindOf(id)));
  // In a line that is read as something else than was meant, other words are taken for names.
  if (code === 'unknown-name')
    return unread.some(
      (other) => other.code === 'syntax' && lineAt(text, other.source.start) === lineAt(text, source.start),
    );
  if (MISSING_IN_JOINT.includes(code)) {
    const item = cabinet.items.find(({ $cstNode: cst }) => cst && cst.offset <= source.start && source.end <= cst.end);
    const { offset = 0, end = 0 } = item?.$cstNode ?? {};
    return unread.some((other) => offset <= other.source.start && other.source.end <= end);
  }
  if (code !== 'never-used') return false;
  const name = text.slice(source.start, source.end);
  return unread.some(({ code: why, source: at, data }) =>
    why === 'syntax' ? wordsOfLine(text, at.start).includes(name) : data?.instead === name,
  );
}

/** Where the line begins that a place is in. */
const lineAt = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** The words of the line that a place is in. */
function wordsOfLine(text: string, at: number): readonly string[] {
  const start = lineAt(text, at);
  const end = text.indexOf('\n', at);
  return text.slice(start, end < 0 ? text.length : end).match(/[\p{L}\p{N}_]+/gu) ?? [];
}

/** The name a part is declared by: `shelf` of `shelf 2`. */
const kindOf = (id: string): string => id.replace(/ \d+$/, '');

/** A part that nothing mentions is not fixed, which is an error: that it is unused and unattached goes without saying. */
function saidOtherwise(own: readonly Finding[]): readonly Finding[] {
  const loose = new Set(own.filter(({ code }) => code === 'part-not-fixed').flatMap(({ about }) => about.parts ?? []));
  const kinds = new Set([...loose].map(kindOf));
  const idle = own.filter(
    ({ code, about: { parts = [] } }) => code === 'never-used' && parts.some((id) => kinds.has(id)),
  );
  const names = new Set(idle.flatMap(({ about }) => about.parts ?? []));
  const unattached = own.filter(
    ({ code, about: { parts = [] } }) =>
      code === 'part-unattached' && parts.length > 0 && parts.every((id) => loose.has(id) && names.has(kindOf(id))),
  );
  return [...idle, ...unattached];
}
