import { type Finding, type ParameterValue, type Source, say, type Text, UNUSED_SILENCE } from '@dryfit/engine';
import type { Variant } from '../fits/fits.js';

/**
 * What is found in a cabinet as a job makes it and not in the cabinet as written, told at the line of the job: there
 * is the number that does not suit.
 */
export function variantFindings(written: Variant, made: Variant, line: Source): readonly Finding[] {
  if (made === written) return [];
  const known = new Set(written.findings.flatMap((finding) => [identity(finding), wording(finding)]));
  const label = labelOf(made.result.spec.name, made.result.spec.parameters);
  return made.findings
    .filter(
      (finding) => finding.code !== UNUSED_SILENCE && !known.has(identity(finding)) && !known.has(wording(finding)),
    )
    .map((finding) => ({
      ...finding,
      message: [...label, ': ', ...finding.message],
      source: line,
      related: [{ message: say`found here`, source: finding.source }, ...finding.related],
    }));
}

/** A line that allows something has its use if the cabinet as written needs it, or as any job makes it. */
export function isUsedElsewhere(finding: Finding, made: readonly Variant[]): boolean {
  if (finding.code !== UNUSED_SILENCE) return false;
  return made.some((variant) => !variant.findings.some((other) => identity(other) === identity(finding)));
}

/** The same thing found about the same pieces at the same place, whatever its figures. */
const identity = ({ code, source, about }: Finding): string =>
  JSON.stringify([code, source.uri, source.start, source.end, about.parts, about.joint, about.slots, about.statement]);

/** The same said in the same words at the same place, if perhaps about more or fewer slots. */
const wording = ({ code, source, message }: Finding): string =>
  JSON.stringify([code, source.uri, source.start, source.end, message]);

function labelOf(name: string, parameters: readonly ParameterValue[]): Text {
  const given = parameters.filter(({ overridden }) => overridden);
  const label: Text[number][] = [`${name} with `];
  given.forEach(({ name, value, count }, i) => {
    label.push(`${i > 0 ? ', ' : ''}${name} `, count ? value.toString() : value);
  });
  return label;
}
