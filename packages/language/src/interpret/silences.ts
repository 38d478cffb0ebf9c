import { checkCodes, type Silence } from '@dryfit/engine';
import type { Silence as SilenceNode } from '../generated/ast.js';
import type { Places } from './source.js';

/** The engine's checks that braces allow, with the reasons given. The language's own are allowed in findings/allowed.ts. */
export function readSilences(
  nodes: readonly SilenceNode[],
  { places }: { readonly places: Places },
): readonly Silence[] {
  return nodes
    .filter((node) => node.reason !== undefined && checkCodes.includes(node.check))
    .map((node) => ({ check: node.check, reason: node.reason, source: places.of(node) }));
}
