import type { AnyRow, Edge, General, Normal } from './normalise.js';

/** The same nodes with fewer equations. */
export function withRows(system: Normal, keep: (row: AnyRow) => boolean): Normal {
  return {
    ...system,
    edges: system.edges.filter(keep),
    generals: system.generals.filter(keep),
    empties: system.empties.filter(keep),
  };
}

/** All equations of a system: edges, generals, empties, each in the order of contents. */
export function rowsOf(system: Normal): readonly AnyRow[] {
  return [...system.edges, ...system.generals, ...system.empties];
}

/** A system with fewer equations and only the nodes they name, renumbered in the order of ranks. */
export function compact(system: Normal, keep: (row: AnyRow) => boolean): Normal {
  const { edges, generals, empties } = withRows(system, keep);
  const used = new Uint8Array(system.count);
  for (const { high, low } of edges) {
    used[high] = 1;
    used[low] = 1;
  }
  for (const { terms } of generals) for (const { unknown } of terms) used[unknown] = 1;
  const first = system.count - 3;
  const nodes = [...system.byRank].filter((node) => used[node] === 1 || node >= first);
  const number = new Int32Array(system.count);
  nodes.forEach((node, i) => {
    number[node] = i;
  });
  const at = (node: number) => number[node] as number;
  const inOrder = Int32Array.from(nodes, (_, i) => i);
  return {
    count: nodes.length,
    axis: Uint8Array.from(nodes, (node) => system.axis[node] as number),
    plane: Uint8Array.from(nodes, (node) => system.plane[node] as number),
    rank: inOrder,
    byRank: inOrder,
    grounds: system.grounds.map((ground) => (ground === undefined ? undefined : at(ground))),
    edges: edges.map((edge): Edge => ({ ...edge, high: at(edge.high), low: at(edge.low) })),
    generals: generals.map(
      (row): General => ({ ...row, terms: row.terms.map((term) => ({ ...term, unknown: at(term.unknown) })) }),
    ),
    empties,
  };
}
