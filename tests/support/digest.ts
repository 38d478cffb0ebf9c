import {
  AXES,
  type Cut,
  type Finding,
  type FitResult,
  type FittedJoint,
  type FittedPart,
  type Half,
  Rational,
  SIDES,
  type Side,
} from '@dryfit/engine';

/**
 * What a fit says, as plain comparable data: exact lengths as "n/d", everything in the order of its ids, no places
 * in a text. `words` keeps the sentences, which quote lengths as they were written.
 */
export function digest(result: FitResult, words = true): unknown {
  const { fit, findings, silenced } = result;
  return plain({
    name: fit.name,
    parameters: fit.parameters.map(({ name, value, count, overridden }) => ({ name, value, count, overridden })),
    thickness: fit.thickness,
    milled: fit.milled,
    outside: fit.outside,
    parts: ordered(
      fit.parts.map((part) => ({
        ...partDigest(part),
        alike: alike(fit.parts, part),
        ...reasonsOf(result, part, words),
      })),
    ),
    joints: ordered(fit.joints.map(jointDigest)),
    findings: ordered(findings.map((finding) => findingDigest(finding, words))),
    silenced: ordered(silenced.map((finding) => findingDigest(finding, words))),
  });
}

/** Ids of the parts that are the same piece as this one. */
export function alike(parts: readonly FittedPart[], part: FittedPart): readonly string[] {
  return parts
    .filter(({ same }) => same === part.same)
    .map(({ id }) => id)
    .sort();
}

function partDigest({ id, attitude, material, box, extent, grain, cutSize, bands, cuts }: FittedPart) {
  return {
    id,
    attitude,
    material,
    box,
    extent,
    grain,
    cutSize,
    bands: ordered(bands),
    cuts: ordered(cuts.map(cutDigest)),
  };
}

function cutDigest(cut: Cut): unknown {
  const { source: _, ...rest } = cut;
  return rest;
}

function reasonsOf(result: FitResult, part: FittedPart, words: boolean) {
  const reason = ({ statement, text, adds }: ReturnType<FitResult['reasons']>[number]) =>
    words ? { statement, text, adds } : { statement, adds };
  return {
    reasons: AXES.map((axis) => ordered(result.reasons(part.id, axis).map(reason))),
    places: SIDES.map((side: Side) => ordered(result.place(part.id, side).map(reason))),
  };
}

function jointDigest(joint: FittedJoint) {
  const { source: _, connector, machine, ...rest } = joint;
  return { ...rest, connector: connector?.name, machine: machine?.name, halves: joint.halves.map(halfDigest) };
}

const halfDigest = (half: Half): unknown => half;

function findingDigest(finding: Finding, words: boolean) {
  const { code, severity, message, cure, about, related, data } = finding;
  const said = words ? { message, cure, related: related.map((one) => one.message) } : { data: figures(message) };
  return {
    code,
    severity,
    about: { ...about, parts: [...(about.parts ?? [])].sort() },
    ...(words && { data }),
    ...said,
  };
}

/** The figures of a message without its words. */
export const figures = (message: Finding['message']): readonly unknown[] =>
  message.filter((piece) => typeof piece !== 'string');

/** Rationals become "n/d"; undefined properties go; a bounded length is its value to a millionth. */
export function plain(value: unknown): unknown {
  if (value instanceof Rational) return value.toString();
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value);
  if (entries.length === 2 && 'value' in value && 'error' in value) return (value.value as number).toFixed(6);
  return Object.fromEntries(entries.filter(([, item]) => item !== undefined).map(([key, item]) => [key, plain(item)]));
}

function ordered<T>(list: readonly T[]): T[] {
  return list
    .map((item) => ({ item, key: JSON.stringify(plain(item)) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({ item }) => item);
}
