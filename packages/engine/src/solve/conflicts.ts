import { Rational } from '../number/rational.js';
import { Agreement } from './agreement.js';
import { factor } from './factor.js';
import { closing, type Loop, statementsOf } from './loops.js';
import { type AnyRow, type Normal, termsOf } from './normalise.js';
import { alongChain } from './order.js';
import { smallestDisagreement, withoutSpare } from './smallest.js';
import { compact, rowsOf, withRows } from './subsystem.js';
import { suspects } from './suspects.js';
import { type Conflict, type Equation, MAX_CONFLICTS } from './types.js';

/**
 * Finds sets of statements that do not agree, one after the other: each found, the written equations of its
 * loop are left out and the rest is looked at again.
 */
export function findConflicts(system: Normal, equations: readonly Equation[]): readonly Conflict[] {
  const conflicts: Conflict[] = [];
  const known = new Set<string>();
  const banned = new Set<number>();
  // A set met again bans its equations and is not shown twice; a cabinet full of those is given up on.
  for (let round = 0; conflicts.length < MAX_CONFLICTS && round < 3 * MAX_CONFLICTS; round++) {
    const rest = factor(withRows(system, (row) => !banned.has(row.index)));
    if (rest.bad.length === 0) break;
    const tainted = suspects(rest);
    const pool = compact(rest.system, (row) => tainted.has(row.index));
    const loop = smallestDisagreement(pool);
    if (!loop) break;
    const shown = withAllTheirEquations(loop, pool, system, banned);
    ban(loop, banned);
    ban(shown.loop, banned);
    const key = [...statementsOf(shown.loop)].sort().join('\n');
    if (known.has(key)) continue;
    known.add(key);
    conflicts.push(describe(shown.loop, shown.system, pool, equations));
  }
  return conflicts;
}

/**
 * What is shown of a loop: its statements' other equations, banned ones too, count when it comes to which of them
 * can be spared.
 */
function withAllTheirEquations(
  loop: Loop,
  pool: Normal,
  system: Normal,
  banned: ReadonlySet<number>,
): { loop: Loop; system: Normal } {
  const names = new Set(statementsOf(loop));
  if (!rowsOf(system).some((row) => banned.has(row.index) && names.has(row.statement))) return { loop, system: pool };
  const statements = new Set(withoutSpare(system, loop));
  const whole = compact(system, (row) => statements.has(row.statement));
  const shown = smallestDisagreement(whole);
  return shown ? { loop: shown, system: whole } : { loop, system: pool };
}

/** Facts nobody wrote are hardly wrong, and other conflicts may rest on them: they stay if anything else goes. */
function ban(loop: Loop, banned: Set<number>): void {
  const written = loop.filter((row) => row.written);
  for (const row of written.length > 0 ? written : loop) banned.add(row.index);
}

/** In loops of more statements than this nobody can be singled out. */
const WEIGHED = 40;

function describe(loop: Loop, whole: Normal, pool: Normal, equations: readonly Equation[]): Conflict {
  const { multipliers, rest } = closing(whole, loop);
  const blame = chooseBlame(loop, multipliers, pool, equations);
  const own = loop.filter((row) => row.statement === blame);
  const times = (row: AnyRow) => multipliers.get(row.index) ?? Rational.ZERO;
  const total = Rational.sum(own.map(times));
  const first = own[0] as AnyRow;
  const low = termsOf(first).find((term) => term.coefficient.sign() < 0) ?? termsOf(first)[0];
  const inOrder = alongChain(
    [...own, ...loop.filter((row) => row.statement !== blame)],
    termsOf,
    low ? [low.unknown] : [],
  );
  return {
    axis: first.axis,
    equations: inOrder.map((row) => row.index),
    statements: statementsOf(inOrder),
    blame,
    miss: rest.div(total.isZero() ? times(first) : total),
  };
}

/**
 * The statement to see the miss from: written rather than a fact; one without which nothing disagrees any more;
 * one whose number does not cancel within the loop, and that states a number at all; the first by name.
 */
function chooseBlame(
  loop: Loop,
  multipliers: ReadonlyMap<number, Rational>,
  pool: Normal,
  equations: readonly Equation[],
): string {
  const others = [...new Set(rowsOf(pool).map((row) => row.statement))];
  const statements = statementsOf(loop);
  const agreement = new Agreement(pool);
  const marks = statements.map((statement) => {
    const own = loop.filter((row) => row.statement === statement);
    const total = Rational.sum(own.map((row) => multipliers.get(row.index) ?? Rational.ZERO));
    const states = own.some((row) => {
      const { value, terms } = (equations[row.index] as Equation).value;
      return !value.isZero() || terms.length > 0;
    });
    const rest = () => others.filter((other) => other !== statement);
    const heals = statements.length > WEIGHED || agreement.agree(rest());
    const doubts = [!own.some((row) => row.written), !heals, total.isZero(), !states];
    return { statement, key: `${doubts.map(Number).join('')}${statement}` };
  });
  return marks.reduce((best, mark) => (mark.key < best.key ? mark : best)).statement;
}
