/**
 * Strongly connected components of a directed graph, each after those it leads to (Tarjan, "Depth-first search and
 * linear graph algorithms", 1972), without recursion. `arcs[i]` are the nodes that node i leads to.
 */
export function components(arcs: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const found: number[][] = [];
  const index = new Int32Array(arcs.length).fill(-1);
  const low = new Int32Array(arcs.length);
  const open = new Uint8Array(arcs.length);
  const next = new Int32Array(arcs.length);
  const stack: number[] = [];
  const path: number[] = [];
  let count = 0;
  const enter = (node: number): void => {
    index[node] = low[node] = count++;
    open[node] = 1;
    stack.push(node);
    path.push(node);
  };
  for (let start = 0; start < arcs.length; start++) {
    if (index[start] !== -1) continue;
    enter(start);
    for (let node = path.at(-1); node !== undefined; node = path.at(-1)) {
      const to = arcs[node]?.[next[node] as number];
      if (to !== undefined) {
        next[node] = (next[node] as number) + 1;
        if (index[to] === -1) enter(to);
        else if (open[to] === 1) low[node] = Math.min(low[node] as number, index[to] as number);
        continue;
      }
      path.pop();
      const above = path.at(-1);
      if (above !== undefined) low[above] = Math.min(low[above] as number, low[node] as number);
      if (low[node] !== index[node]) continue;
      const group: number[] = [];
      for (let member = stack.pop(); member !== undefined; member = stack.pop()) {
        open[member] = 0;
        group.push(member);
        if (member === node) break;
      }
      found.push(group.sort((a, b) => a - b));
    }
  }
  return found;
}

/** Groups that hang together by undirected links, in the order of their first members. */
export function connected(
  members: readonly number[],
  links: Iterable<readonly [number, number]>,
): readonly (readonly number[])[] {
  const root = new Map(members.map((member) => [member, member]));
  const find = (member: number): number => {
    let at = member;
    for (let above = root.get(at); above !== undefined && above !== at; above = root.get(at)) {
      root.set(at, root.get(above) ?? above);
      at = above;
    }
    return at;
  };
  for (const [a, b] of links) if (root.has(a) && root.has(b)) root.set(find(a), find(b));
  const groups = new Map<number, number[]>();
  for (const member of members) {
    const group = groups.get(find(member));
    if (group) group.push(member);
    else groups.set(find(member), [member]);
  }
  return [...groups.values()];
}
