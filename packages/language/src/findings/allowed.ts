import { type Finding, type Source, say } from '@dryfit/engine';
import { allowUnused } from '../checks/allow-unused.js';
import { ALLOWED_HERE } from '../checks/unknown-check.js';
import type { File } from '../generated/ast.js';
import { silencesOf } from '../interpret/silences.js';
import { Places } from '../interpret/source.js';

/** Takes away the language's findings that the braces around them allow. */
export function allowed(file: File, findings: readonly Finding[]): readonly Finding[] {
  const places = new Places(file);
  const silences = silencesOf(file)
    .filter((node) => node.reason !== undefined && ALLOWED_HERE.includes(node.check))
    .map((node) => ({ node, around: places.of(node.$container) }));
  if (silences.length === 0) return findings;
  const used = new Set<unknown>();
  const kept = findings.filter((finding) => {
    const by = silences.find(({ node, around }) => node.check === finding.code && holds(around, finding.source));
    if (by) used.add(by);
    return !by;
  });
  const idle = silences.filter((silence) => !used.has(silence));
  return [
    ...kept,
    ...idle.map(({ node }) =>
      allowUnused({
        source: places.of(node),
        message: say`nothing here is found by ${node.check}, so allowing it has no effect`,
        cure: say`Take the line out.`,
      }),
    ),
  ];
}

const holds = (around: Source, { start, end }: Source): boolean => around.start <= start && end <= around.end;
