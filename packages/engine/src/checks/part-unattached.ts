import { list, say } from '../fit/text.js';
import type { PartId } from '../spec/spec.js';
import type { Check } from './check.js';
import { once } from './support/alike.js';

/** No joint holds a part, or a group of parts, to the rest of the cabinet. */
export const partUnattached: Check = {
  code: 'part-unattached',
  severity: 'warning',
  *run({ fit, part }) {
    const groups = connected(
      once(fit.parts.map(({ id }) => id)),
      fit.joints.map(({ entering, host }) => [entering, host]),
    );
    const main = groups.reduce<readonly PartId[]>((most, group) => (group.length > most.length ? group : most), []);
    for (const group of groups) {
      const first = group[0] === undefined ? undefined : part(group[0]);
      if (group === main || !first) continue;
      const many = group.length > 1;
      yield {
        message: many
          ? say`${list(group)} hold on to each other, but no joint holds them to the rest of the cabinet`
          : say`no joint holds ${first.id} to any other part: it would fall out`,
        cure: say`Join ${first.id} to a part beside it with butt, groove, rebate or house, or let it lie loose with rest.`,
        source: first.source,
        related: group.slice(1).flatMap((id) => {
          const other = part(id);
          return other ? [{ message: say`${id} belongs to it`, source: other.source }] : [];
        }),
        about: { parts: group },
      };
    }
  },
};

/** The parts that hang together, each group and the groups among themselves in the order given. */
function connected(
  parts: readonly PartId[],
  pairs: readonly (readonly [PartId, PartId])[],
): readonly (readonly PartId[])[] {
  const root = new Map(parts.map((id) => [id, id]));
  const find = (id: PartId): PartId => {
    let at = id;
    for (;;) {
      const next = root.get(at) ?? at;
      if (next === at) return at;
      root.set(at, root.get(next) ?? next);
      at = next;
    }
  };
  for (const [a, b] of pairs) root.set(find(a), find(b));
  const groups = new Map<PartId, PartId[]>();
  for (const id of parts) {
    const group = groups.get(find(id));
    if (group) group.push(id);
    else groups.set(find(id), [id]);
  }
  return [...groups.values()];
}
