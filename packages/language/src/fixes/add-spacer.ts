import { Rational, say } from '@dryfit/engine';
import { isJig } from '../generated/ast.js';
import { unitOf } from '../interpret/units.js';
import { isLibrary } from '../library/library.js';
import { fileOf } from '../scope/imports.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { writeInto } from './support/braces.js';
import { distinct, titled } from './support/facts.js';
import { decent, lengthIn, writtenAs } from './support/figures.js';
import { documentAt } from './support/numbers.js';

/** Gives the shop's jig the spacer that a setback lacks. */
export const addSpacer: Fix = {
  name: 'add-spacer',
  codes: ['spacer-not-in-stock', 'shelf-needs-spacer'],
  most: 1,
  *offer(about): Iterable<Cure> {
    const by = lengthIn(about.finding.data?.setback);
    const name = about.result?.spec.shop.jig?.name;
    if (!by || name === undefined) return;
    for (const piece of pieces(about, by)) {
      const edits = added(about, piece);
      if (edits.length > 0) yield { title: titled(say`Add a spacer of ${piece} to ${name}`, about.unit), edits };
    }
  },
};

/** Pieces that make the setback up, by themselves or on the stock there is; round figures first. */
function pieces({ result, unit }: Case, by: Rational): readonly Rational[] {
  const stock = result?.spec.shop.jig?.spacers ?? [];
  const rests = [by, ...distinct(stock).map((piece) => by.sub(piece))].filter((rest) => rest.sign() > 0);
  const round = rests.flatMap((rest) => [decent(rest, unit, 'less'), decent(rest, unit, 'more')]);
  return [...round.filter((piece) => piece.sign() > 0 && !rests.some((rest) => rest.equals(piece))).slice(0, 4), by];
}

function added(about: Case, piece: Rational): readonly FileEdit[] {
  const source = about.result?.spec.shop.jig?.source;
  const document = source && documentAt(about, source);
  const file = fileOf(document);
  if (!document || !file || isLibrary(document.uri)) return [];
  const jig = file.entries
    .filter(isJig)
    .find(({ $cstNode: cst }) => cst !== undefined && cst.offset <= source.start && source.end <= cst.end);
  const text = writtenAs(piece, unitOf(file));
  const last = jig?.spacers[0]?.pieces.at(-1)?.$cstNode;
  if (last) return [{ uri: document.uri.toString(), start: last.end, end: last.end, text: `, ${text}` }];
  return jig ? [writeInto(jig, `spacers ${text} within ${writtenAs(FINE, unitOf(file))}`)] : [];
}

/** As near as a spacer is cut, for a jig that has none yet: a fifth of a millimetre. */
const FINE = Rational.of(1, 5);
