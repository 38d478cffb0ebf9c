import { type Cabinet, type CabinetItem, type File, isCabinet } from '../generated/ast.js';
import { Lengths } from '../hover/lengths.js';
import { unitOf } from '../interpret/units.js';
import { type Stretch, touches } from '../tree/leaves.js';
import { distanceHints } from './distances.js';
import { flushHints } from './flush.js';
import type { FitOf, Fitted, Hint, HintKinds } from './hint.js';
import { sizeHints } from './sizes.js';
import { slotHints } from './slots.js';
import { spacerHints } from './spacers.js';
import { statementIds } from './statements.js';

/**
 * Hints of the cabinets that a stretch of a file shows, in the order of the text. A cabinet is worked out only if one
 * of its lines in the stretch may have a hint that is wanted.
 */
export function* hintsOf(file: File, within: Stretch, kinds: HintKinds, fitOf: FitOf): Generator<Hint> {
  if (!kinds.sizes && !kinds.spacers && !kinds.slotCounts) return;
  for (const cabinet of file.entries.filter(isCabinet)) {
    if (shows(cabinet, within)) yield* hintsOfCabinet(cabinet, within, kinds, fitOf, new Lengths(unitOf(file)));
  }
}

function* hintsOfCabinet(
  cabinet: Cabinet,
  within: Stretch,
  kinds: HintKinds,
  fitOf: FitOf,
  lengths: Lengths,
): Generator<Hint> {
  const shown = cabinet.items.filter((item) => shows(item, within) && mayHaveHints(item, kinds));
  if (shown.length === 0) return;
  const found = fitOf(cabinet);
  if (found === undefined) return;
  const fitted = { ...found, lengths };
  const ids = statementIds(cabinet);
  const seen = (hint: Hint) => hint.offset >= within.start && hint.offset <= within.end;
  for (const item of shown) yield* hintsOfItem(item, ids.get(item) ?? '', kinds, fitted).filter(seen);
}

function hintsOfItem(item: CabinetItem, id: string, kinds: HintKinds, fitted: Fitted): Hint[] {
  const hints: Hint[] = [];
  if (kinds.sizes && item.$type === 'PartLine') hints.push(...sizeHints(item, fitted));
  if (kinds.sizes && item.$type === 'Placing') hints.push(...distanceHints(item.ref ? [item.ref] : [], item, fitted));
  if (item.$type !== 'Joint') return hints;
  if (kinds.slotCounts) hints.push(...slotHints(item, id, fitted));
  if (kinds.spacers) hints.push(...spacerHints(item, id, fitted));
  if (kinds.sizes) hints.push(...distanceHints(item.entering, item, fitted), ...flushHints(item, fitted));
  return hints.sort((a, b) => a.offset - b.offset);
}

function mayHaveHints({ $type }: CabinetItem, kinds: HintKinds): boolean {
  return $type === 'Joint' || (kinds.sizes && ($type === 'PartLine' || $type === 'Placing'));
}

function shows({ $cstNode: cst }: Cabinet | CabinetItem, within: Stretch): boolean {
  return cst !== undefined && touches({ start: cst.offset, end: cst.end }, within);
}
