import { type Finding, say } from '@dryfit/engine';
import { reporter } from '../findings/report.js';
import type { JobLine } from '../generated/ast.js';
import type { Places } from '../interpret/source.js';
import { readWhole } from '../parser/numbers.js';

/** A count that is not a whole number, or below nothing. */
export const notWhole = reporter('not-whole', 'error');

/** How many of a cabinet a line of a job makes is a whole number from 1. */
export function notWholeCount(line: JobLine, places: Places): readonly Finding[] {
  if (line.count === undefined || (readWhole(line.count) ?? 0) > 0) return [];
  return [
    notWhole({
      source: places.property(line, 'count'),
      message: say`${line.count} is not a number of cabinets to make`,
      cure: say`Write a whole number from 1, without a unit.`,
    }),
  ];
}
