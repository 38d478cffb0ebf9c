import { cheapestCover } from '../cover/cover.js';
import type { FitResult, FittedJoint } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import { fit } from '../pipeline.js';
import type { JointStatement, Spec } from '../spec/spec.js';

/** A fixed pattern that a shop could own: its lines, mm from zero, and the name it has where there is one. */
export interface OwnPattern {
  readonly name: string | undefined;
  readonly lines: readonly Rational[];
  /** Indices of the joints it serves, in `joints`. */
  readonly serves: readonly number[];
  /** Of these, the ones whose own lines it has: they stay as they are written. */
  readonly keeps: readonly number[];
}

/** A joint statement of a cabinet whose connectors need a pattern. */
export interface PatternedJoint {
  readonly cabinet: string;
  readonly statement: string;
}

export interface PatternChoice {
  readonly joints: readonly PatternedJoint[];
  /** The fewest patterns that serve every joint that any serves. */
  readonly fewest: readonly OwnPattern[];
  /** No choice has fewer. */
  readonly atLeast: number;
  /** Patterns that could be owned as well, the one that lets most more joints stay as they are written first. */
  readonly more: readonly { readonly pattern: OwnPattern; readonly keeps: number }[];
  /** How many joints stay as they are written with the fewest. */
  readonly kept: number;
  /** Joints that no fixed pattern serves within the limits, not even their own. */
  readonly unserved: readonly PatternedJoint[];
}

/**
 * Which fixed patterns a shop needs for cabinets: each joint may be served by any pattern that puts as many connectors into
 * it and brings no finding that it has not as it is written. The patterns to choose from are those of the cabinets' shops
 * and the lines that spread patterns come to. The choice is a least cover, exact or with its bound.
 */
export async function patternsFor(specs: readonly Spec[], timeLimitMs = 10_000): Promise<PatternChoice> {
  const joints: PatternedJoint[] = [];
  const candidates = new Map<
    string,
    { name: string | undefined; lines: readonly Rational[]; serves: number[]; keeps: number[] }
  >();
  const cases = specs.flatMap((spec) => casesOf(spec));
  for (const { spec, statement, fitted } of cases) {
    joints.push({ cabinet: spec.name, statement: statement.id });
    for (const lines of [...fitted.map(linesUsed), ...fixedOf(spec)]) {
      if (lines.length === 0) continue;
      const key = lines.join(' ');
      if (candidates.has(key)) continue;
      candidates.set(key, { name: nameOf(specs, key), lines, serves: [], keeps: [] });
    }
  }
  cases.forEach((one, index) => {
    const own = new Set(one.fitted.map((joint) => linesUsed(joint).join(' ')));
    for (const candidate of candidates.values()) {
      const keeps = comesToTheSame(one, candidate.lines, own);
      if (keeps || servesAsWell(one, candidate.lines)) candidate.serves.push(index);
      if (keeps) candidate.keeps.push(index);
    }
  });
  const useful = [...candidates.values()].filter(({ serves }) => serves.length > 0);
  const served = new Set(useful.flatMap(({ serves }) => serves));
  const numbers = [...served].sort((a, b) => a - b);
  const place = new Map(numbers.map((joint, i): [number, number] => [joint, i]));
  const { chosen, lowerBound } = await cheapestCover(
    numbers.length,
    useful.map(({ serves }) => ({ cost: 1, serves: serves.map((joint) => place.get(joint) as number) })),
    timeLimitMs,
  );
  const fewest = chosen.flatMap((i) => useful[i] ?? []);
  const kept = new Set(fewest.flatMap(({ keeps }) => keeps));
  return {
    joints,
    fewest,
    atLeast: Math.max(0, Math.ceil(lowerBound - 1e-6)),
    more: furtherOnes(useful, fewest, new Set(kept)),
    kept: kept.size,
    unserved: joints.filter((_, i) => !served.has(i)),
  };
}

interface Case {
  readonly spec: Spec;
  readonly result: FitResult;
  readonly statement: JointStatement;
  readonly fitted: readonly FittedJoint[];
}

/** Joints with connectors of a cabinet, once worked out as written. */
function casesOf(spec: Spec): readonly Case[] {
  const result = fit(spec);
  return spec.statements.flatMap((statement): Case[] => {
    if (statement.kind !== 'joint') return [];
    const fitted = result.fit.joints.filter((joint) => joint.statement === statement.id && joint.halves.length > 0);
    return fitted.length > 0 ? [{ spec, result, statement, fitted }] : [];
  });
}

const linesUsed = (joint: FittedJoint): readonly Rational[] =>
  joint.lines.filter(({ use }) => use === 'used').map(({ fromZero }) => fromZero);

const fixedOf = (spec: Spec): readonly (readonly Rational[])[] =>
  [...spec.shop.patterns.values()].flatMap(({ layout }) => (layout.kind === 'lines' ? [layout.lines] : []));

function nameOf(specs: readonly Spec[], key: string): string | undefined {
  for (const { shop } of specs)
    for (const { name, layout } of shop.patterns.values())
      if (layout.kind === 'lines' && layout.lines.join(' ') === key) return name;
  return undefined;
}

/** Whether a pattern comes to just the lines that are used as written. */
function comesToTheSame({ fitted }: Case, lines: readonly Rational[], own: ReadonlySet<string>): boolean {
  // What lies outside of the contact is not used; only patterns that are alike within it keep a joint as it is.
  return fitted.every((joint) => {
    const { contact, zero } = joint;
    if (!contact || !zero) return false;
    const reach = contact.hi.sub(zero).abs();
    const other = contact.lo.sub(zero).abs();
    const most = reach.gt(other) ? reach : other;
    return own.has(lines.filter((line) => line.le(most)).join(' '));
  });
}

/** The joint with other lines: as many connectors, and no finding that it has not as it is written. */
function servesAsWell({ spec, result, statement, fitted }: Case, lines: readonly Rational[]): boolean {
  const connector = statement.connect ?? spec.connect;
  if (connector?.kind !== 'by') return false;
  const other: JointStatement = { ...statement, connect: { ...connector, pattern: { kind: 'lines', lines } } };
  const tried = fit({ ...spec, statements: spec.statements.map((one) => (one === statement ? other : one)) });
  const now = tried.fit.joints.filter((joint) => joint.statement === statement.id);
  const enough = fitted.every((joint) => {
    const same = now.find(({ id }) => id === joint.id);
    return (same?.halves[0]?.slots.length ?? 0) >= (joint.halves[0]?.slots.length ?? 0);
  });
  if (!enough) return false;
  const known = new Map<string, number>();
  for (const { code } of result.findings) known.set(code, (known.get(code) ?? 0) + 1);
  for (const { code } of tried.findings) {
    const left = (known.get(code) ?? 0) - 1;
    if (left < 0) return false;
    known.set(code, left);
  }
  return true;
}

function furtherOnes(
  useful: readonly OwnPattern[],
  fewest: readonly OwnPattern[],
  kept: Set<number>,
): PatternChoice['more'] {
  const left = new Set(useful.filter((one) => !fewest.includes(one)));
  const more: { pattern: OwnPattern; keeps: number }[] = [];
  for (;;) {
    let best: OwnPattern | undefined;
    let gained = 0;
    for (const one of left) {
      const fresh = one.keeps.filter((joint) => !kept.has(joint)).length;
      if (fresh > gained) [best, gained] = [one, fresh];
    }
    if (!best) return more;
    left.delete(best);
    for (const joint of best.keeps) kept.add(joint);
    more.push({ pattern: best, keeps: gained });
  }
}
