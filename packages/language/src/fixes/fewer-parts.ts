import { isDimensionLine, isPartLine } from '../generated/ast.js';
import { readWhole } from '../parser/numbers.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { because, MILLING } from './support/follow.js';
import { statementOf } from './support/place.js';

/** Makes fewer of the parts that are evenly spaced, until there is room between them. */
export const fewerParts: Fix = {
  name: 'fewer-parts',
  codes: ['openings-negative'],
  most: 1,
  mayFollow: because('parts have other places once there is room between them', ...MILLING),
  *offer(about): Iterable<Cure> {
    const first = about.finding.about.parts?.[0];
    const kind = about.result?.spec.parts.find(({ id }) => id === first)?.kind;
    const line = about.cabinet?.items.filter(isPartLine).find(({ parts }) => parts.some(({ name }) => name === kind));
    const last = line?.to?.$cstNode;
    const [from, to] = [readWhole(line?.from?.$cstNode?.text), readWhole(last?.text)];
    if (!last || from === undefined || to === undefined || isDimensionLine(statementOf(about))) return;
    for (let most = to - 1; most >= from; most--)
      yield {
        title: `Make ${most - from + 1} of ${kind} instead of ${to - from + 1}`,
        edits: [at(about, last, `${most}`)],
      };
  },
};

const at = ({ document }: Case, { offset, end }: { offset: number; end: number }, text: string): FileEdit => ({
  uri: document.uri.toString(),
  start: offset,
  end,
  text,
});
