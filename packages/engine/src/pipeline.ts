import { type CheckContext, runChecks } from './checks/check.js';
import { checks } from './checks/index.js';
import { changesThatMove } from './checks/support/change.js';
import type { Finding } from './fit/finding.js';
import type { FitResult, Reason } from './fit/fit.js';
import { silence } from './fit/silence.js';
import { fitJoints } from './joints/joints.js';
import { lazily } from './lazily.js';
import { Rational } from './number/rational.js';
import { fitParts, outsideOf } from './parts/parts.js';
import { type Solved, solveSpec } from './sizes/solved.js';
import { partStatement } from './sizes/system.js';
import { axisOf, highSide, lowSide, type Side } from './spec/sides.js';
import type { Source } from './spec/source.js';
import type { PartId, Spec, Statement, Written } from './spec/spec.js';
import { AsMade } from './tolerance/as-made.js';
import { jointErrors } from './tolerance/joint-errors.js';
import { turnedReasons } from './turned/reasons.js';

/**
 * Works out a cabinet: sizes, slots, spacers and stops, and every finding. Pure and total: a spec that cannot
 * be made gives findings, never an exception.
 */
export function fit(spec: Spec): FitResult {
  const context = workOut(spec);
  const { findings, silenced } = silence(spec, sorted(runChecks(checks, context)));
  return answering({ spec, fit: context.fit, findings, silenced });
}

/**
 * What was found with answers to what may be asked of it, and without what it was found by: planes, stacks and bodies
 * take more room than all that is found, and of most cabinets nobody ever asks why. Whoever does has the sizes solved
 * once more.
 */
function answering(found: Omit<FitResult, 'reasons' | 'place' | 'errors'>): FitResult {
  const { spec, fit } = found;
  const solved = lazily(() => solveSpec(spec));
  const made = lazily(() => new AsMade(spec, solved(), fit));
  return {
    ...found,
    reasons: (part, axis) =>
      turnedReasons(solved(), part, axis) ?? reasonsBetween(solved(), part, highSide(axis), lowSide(axis)),
    place: (part, side) => placeReasons(solved(), part, side),
    errors: (id) => {
      const joint = fit.joints.find((one) => one.id === id);
      return joint ? jointErrors(made(), joint) : [];
    },
  };
}

/** All that is known of a cabinet before any check has looked at it. */
export function workOut(spec: Spec): CheckContext {
  const solved = solveSpec(spec);
  const joints = fitJoints(solved);
  const parts = fitParts(solved, joints);
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const jointOf = new Map(joints.map((joint) => [joint.id, joint]));
  const statementOf = new Map(spec.statements.map((statement): [string, Statement] => [statement.id, statement]));
  return {
    spec,
    fit: {
      name: spec.name,
      source: spec.source,
      parameters: spec.parameters,
      thickness: spec.thickness,
      milled: spec.milled.when,
      outside: outsideOf(parts),
      parts,
      joints,
    },
    solved,
    part: (id) => partOf.get(id),
    joint: (id) => jointOf.get(id),
    statement: (id) => statementOf.get(id),
  };
}

/** In the order of the text, so that the order of checks is of no account. */
function sorted(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) =>
      compare(a.source.uri, b.source.uri) ||
      a.source.start - b.source.start ||
      compare(a.code, b.code) ||
      compare(JSON.stringify(a.about), JSON.stringify(b.about)),
  );
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function reasonsBetween(solved: Solved, part: PartId, high: Side, low: Side): readonly Reason[] {
  const a = solved.system.planes.side(part, high);
  const b = solved.system.planes.side(part, low);
  if (a === undefined || b === undefined || solved.extent(part, axisOf(high)) === undefined) return [];
  return explain(solved, [
    { unknown: a, coefficient: Rational.ONE },
    { unknown: b, coefficient: Rational.of(-1) },
  ]);
}

function placeReasons(solved: Solved, part: PartId, side: Side): readonly Reason[] {
  const number = solved.system.planes.side(part, side);
  if (number === undefined || solved.at(part, side) === undefined) return [];
  return explain(solved, [{ unknown: number, coefficient: Rational.ONE }]);
}

function explain(
  solved: Solved,
  terms: readonly { readonly unknown: number; readonly coefficient: Rational }[],
): readonly Reason[] {
  const sources = statementSources(solved.spec);
  return solved.solution.explain(terms).flatMap(({ equation, multiplier }) => {
    const found = solved.system.equations[equation];
    if (!found) return [];
    const { statement, text, value } = found;
    const part = multiplier.abs();
    const share = part.equals(Rational.ONE) || value.value.isZero() ? undefined : { part, of: value.value.abs() };
    return [{ statement, source: sources.get(statement), text, adds: value.value.mul(multiplier), share }];
  });
}

/** A number in the text and what to write instead. */
export interface NumberToChange {
  readonly written: Written;
  readonly to: Rational;
  /** The statement it stands in. */
  readonly statement: string;
}

/** A side of a part. */
export interface SideOf {
  readonly part: PartId;
  readonly side: Side;
}

/**
 * Numbers of a spec that put side `high` further by `by` mm, along their axis, from side `low`, when one of them is
 * changed; the one least in the way of the rest first. Works the sizes out anew, so it is for questions, not for keys.
 */
export function numbersThatMove(spec: Spec, high: SideOf, low: SideOf, by: Rational): readonly NumberToChange[] {
  const solved = solveSpec(spec);
  const { planes } = solved.system;
  const statements = new Map(spec.statements.map((statement): [string, Statement] => [statement.id, statement]));
  const context = { solved, statement: (id: string) => statements.get(id) };
  const [a, b] = [planes.side(high.part, high.side), planes.side(low.part, low.side)];
  return changesThatMove(context, a, b, by).map(({ number, by: change }) => ({
    written: number.written,
    to: number.written.value.add(change),
    statement: number.statement.id,
  }));
}

/** Where each statement stands, and each part's declaration. */
export function statementSources(spec: Spec): ReadonlyMap<string, Source> {
  const sources = new Map<string, Source>();
  for (const part of spec.parts) sources.set(partStatement(part), part.source);
  for (const statement of spec.statements) sources.set(statement.id, statement.source);
  return sources;
}
