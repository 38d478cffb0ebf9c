import { type Finding, say } from '@dryfit/engine';
import { reporter } from '../findings/report.js';
import { isCabinet, isChanges, isGlue, isJig, isLimits, isPose, isTolerances } from '../generated/ast.js';
import { type Named, namesOfCabinet, namesOfFile } from '../scope/names.js';
import type { FileCheck } from './file-check.js';

/** Two things of one kind have the same name, so that nobody can tell which is meant. */
export const duplicateName = reporter('duplicate-name', 'error');

export const duplicateNames: FileCheck = ({ file, places }) => {
  const named = [namesOfFile(file), ...file.entries.filter(isCabinet).map(namesOfCabinet)];
  const found = named.flatMap(({ duplicates }) => duplicates.map(({ first, again }) => twice(first, again)));
  return [...found, ...[isJig, isPose, isLimits, isTolerances, isChanges, isGlue].flatMap(onlyOne)];

  function twice(first: Named, again: Named): Finding {
    return duplicateName({
      source: places.property(again, 'name'),
      message: say`there is a ${again.$type.toLowerCase()} called ${again.name} already`,
      cure: say`Give one of the two another name.`,
      related: [{ message: say`the first ${again.name}`, source: places.property(first, 'name') }],
    });
  }

  /** A file has one jig, one pose, one set of limits, one of tolerances, one of changes and one glue: nothing says by name which of two is meant. */
  function onlyOne(
    is: typeof isJig | typeof isPose | typeof isLimits | typeof isTolerances | typeof isChanges | typeof isGlue,
  ): Finding[] {
    const [first, ...others] = file.entries.filter((entry) => is(entry));
    if (!first) return [];
    const words = `${first.$type.toLowerCase()}`;
    return others.map((again) =>
      duplicateName({
        source: places.keyword(again, words),
        message: say`a file describes one ${words}, and this is another`,
        cure: say`Take one of the two out, or put it into a file of its own.`,
        related: [{ message: say`the first`, source: places.keyword(first, words) }],
      }),
    );
  }
};
