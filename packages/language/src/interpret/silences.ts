import { checkCodes, type Silence } from '@dryfit/engine';
import type { File, Silence as SilenceNode } from '../generated/ast.js';
import type { Places } from './source.js';

const ENGINE = new Set(checkCodes);

/** The engine's checks that braces allow, with the reasons given. The language's own are allowed in findings/allowed.ts. */
export function readSilences(
  nodes: readonly SilenceNode[],
  { places }: { readonly places: Places },
): readonly Silence[] {
  return nodes
    .filter((node) => node.reason !== undefined && ENGINE.has(node.check))
    .map((node) => ({ check: node.check, reason: node.reason, source: places.of(node) }));
}

/** Every line of a file that allows a check. */
export function silencesOf(file: File): readonly SilenceNode[] {
  const found: SilenceNode[] = [];
  for (const entry of file.entries) {
    if (entry.$type !== 'Cabinet') continue;
    for (const item of entry.items) {
      if (item.$type === 'Silence') found.push(item);
      else if ('silences' in item) found.push(...item.silences);
      else if (item.$type === 'Joint') for (const fact of item.facts) if (fact.$type === 'Silence') found.push(fact);
    }
  }
  return found;
}
