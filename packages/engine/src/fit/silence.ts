import type { Silence, Spec } from '../spec/spec.js';
import type { Finding } from './finding.js';
import { say } from './text.js';

/** Code of the finding about a silence that silences nothing. */
export const UNUSED_SILENCE = 'allow-unused';

/**
 * Takes away the findings a spec allows: a silence in a statement's braces covers that statement's findings, one
 * in the cabinet covers all of that check. A silence that covers nothing is itself a finding.
 */
export function silence(
  spec: Spec,
  findings: readonly Finding[],
): { readonly findings: readonly Finding[]; readonly silenced: readonly Finding[] } {
  const scopes: { readonly silence: Silence; readonly statement: string | undefined }[] = [
    ...spec.silences.map((s) => ({ silence: s, statement: undefined })),
    ...spec.statements.flatMap((statement) => statement.silences.map((s) => ({ silence: s, statement: statement.id }))),
  ];
  if (scopes.length === 0) return { findings, silenced: [] };
  const used = new Set<Silence>();
  const kept: Finding[] = [];
  const silenced: Finding[] = [];
  for (const finding of findings) {
    const scope = scopes.find(
      (s) => s.silence.check === finding.code && (s.statement === undefined || s.statement === finding.about.statement),
    );
    if (scope) {
      used.add(scope.silence);
      silenced.push(finding);
    } else kept.push(finding);
  }
  for (const { silence: unused } of scopes) {
    if (used.has(unused)) continue;
    kept.push({
      code: UNUSED_SILENCE,
      severity: 'warning',
      message: say`nothing here is found by ${unused.check}, so allowing it has no effect`,
      cure: say`Take the line out.`,
      source: unused.source,
      related: [],
      about: {},
    });
  }
  return { findings: kept, silenced };
}
