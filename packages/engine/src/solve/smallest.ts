import { Agreement } from './agreement.js';
import { factor } from './factor.js';
import { badLoop, type Loop, statementsOf } from './loops.js';
import { compareText, type Normal } from './normalise.js';
import { compact, rowsOf, withRows } from './subsystem.js';

/** Up to this many statements the smallest set is found for certain. */
export const CERTAIN = 16;
/** Up to this many it is looked for, with at most `ROUNDS` rounds. */
const LIKELY = 30;
const ROUNDS = 40;

/**
 * Statements that do not agree, none of which can be spared: taking any one away makes the others agree. No
 * smaller set exists if the system has at most {@link CERTAIN} statements. Undefined if all agree.
 */
export function smallestDisagreement(system: Normal): Loop | undefined {
  const loop = badLoop(factor(system));
  if (!loop) return undefined;
  const all = [...new Set(rowsOf(system).map((row) => row.statement))].sort(compareText);
  const found = withoutSpare(system, loop);
  const fewest = all.length <= LIKELY ? smallestOf(system, all, found) : found;
  if (fewest.length === statementsOf(loop).length) return loop;
  return badLoop(factor(ofStatements(system, fewest)));
}

/**
 * The statements of a loop that does not close, but for those without which the others still disagree; dropped
 * one after the other, all their equations in the system counting.
 */
export function withoutSpare(system: Normal, loop: Loop): readonly string[] {
  let left = [...statementsOf(loop)].sort(compareText);
  const names = new Set(left);
  const own = compact(system, (row) => names.has(row.statement));
  const agreement = new Agreement(own);
  // If no other equation is left over beside those that are independent, this loop is the only one.
  if (factor(own).spare.length === 1) return left;
  for (const statement of left) {
    const fewer = left.filter((other) => other !== statement);
    if (!agreement.agree(fewer)) left = fewer;
  }
  return left;
}

function ofStatements(system: Normal, statements: readonly string[]): Normal {
  const names = new Set(statements);
  return withRows(system, (row) => names.has(row.statement));
}

/**
 * A set of statements that disagrees must take something from every set whose removal makes the rest agree, and
 * the smallest is the smallest that does. So: collect such removals; take the fewest statements that meet them
 * all; if those disagree they are the answer, and if not, they grow to a largest agreeing set, whose
 * complement is one more removal (implicit hitting sets; Ignatiev, Previti, Liffiton, Marques-Silva, "Smallest
 * MUS Extraction with Minimal Hitting Set Dualization", 2015). Sets are bits of a number.
 */
function smallestOf(system: Normal, all: readonly string[], found: readonly string[]): readonly string[] {
  const agreement = new Agreement(system);
  const pick = (set: number) => all.filter((_, i) => set & (1 << i));
  const everything = all.reduce((set, _, i) => set | (1 << i), 0);
  const removals: number[] = [];
  for (let round = 0; all.length <= CERTAIN || round < ROUNDS; round++) {
    const fewest = fewestMeeting(removals, found.length - 1);
    if (fewest === undefined) return found;
    if (!agreement.agree(pick(fewest))) return pick(fewest);
    let agreeing = fewest;
    for (let i = 0; i < all.length; i++) {
      const more = agreeing | (1 << i);
      if (more !== agreeing && agreement.agree(pick(more))) agreeing = more;
    }
    removals.push(everything & ~agreeing);
  }
  return found;
}

/** The fewest members, at most `most`, that have one in common with every set. */
function fewestMeeting(sets: readonly number[], most: number): number | undefined {
  const search = (chosen: number, left: number): number | undefined => {
    const missed = sets.find((set) => (set & chosen) === 0);
    if (missed === undefined) return chosen;
    if (left === 0) return undefined;
    for (let rest = missed; rest !== 0; rest &= rest - 1) {
      const found = search(chosen | (rest & -rest), left - 1);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  for (let size = 0; size <= most; size++) {
    const found = search(0, size);
    if (found !== undefined) return found;
  }
  return undefined;
}
