import { type NumberToChange, type Rational, type Source, say, type Text } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import { URI } from 'langium';
import type { Unit } from '../../parser/numbers.js';
import type { Case, Cure, FileEdit } from '../fix.js';
import { titled } from './facts.js';
import { decent, writtenAs, writtenLike } from './figures.js';
import { textIn } from './place.js';

/** The document that a place stands in. */
export const documentAt = ({ services }: Case, { uri }: Source): LangiumDocument | undefined =>
  services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));

const PLAIN = /^(\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(\.\d+)?)[ \t]*(mm|in|["″])?$/;

/** Makes a length of the text another one: a plain number is written anew, to anything else the rest is added. */
export function rewriteNumber(about: Case, source: Source, from: Rational, to: Rational): FileEdit | undefined {
  const document = documentAt(about, source);
  if (!document) return undefined;
  const { uri, start } = source;
  const whole = textIn(document).slice(start, source.end);
  // A tolerance stays what it is.
  const tolerance = /[ \t]*(±|\+\/-|\bplus\b)[\s\S]*$/.exec(whole)?.[0] ?? '';
  const text = whole.slice(0, whole.length - tolerance.length);
  const end = start + text.length;
  if (PLAIN.test(text)) return { uri, start, end, text: writtenLike(to, text, about.unit) };
  const by = to.sub(from);
  return { uri, start: end, end, text: ` ${by.sign() < 0 ? '-' : '+'} ${writtenAs(by.abs(), about.unit)}` };
}

/** A number to change, as a cure. */
export function cureByNumber(about: Case, { written, to, statement }: NumberToChange, so?: Text): Cure[] {
  const edit = rewriteNumber(about, written.source, written.value, to);
  if (!edit) return [];
  const plain = edit.end > edit.start;
  const text = plain
    ? say`Write ${edit.text} instead of ${written.text} in "${statement}"`
    : say`Make ${`"${written.text}"`} ${to.sub(written.value).abs()} ${to.gt(written.value) ? 'more' : 'less'} in "${statement}"`;
  return [{ title: titled(so === undefined ? text : [...text, ', so that ', ...so], about.unit), edits: [edit] }];
}

/** The same number changed a little further, to a decent figure, where it is written plainly and that is another one. */
export function rounded(number: NumberToChange, unit: Unit): readonly NumberToChange[] {
  const { written, to } = number;
  const round = decent(to, unit, to.gt(written.value) ? 'more' : 'less');
  return round.equals(to) || round.sign() <= 0 ? [number] : [{ ...number, to: round }, number];
}
