import { Rational, say } from '@dryfit/engine';
import { isLayout, type Joint } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { jointOf, titled } from './support/facts.js';
import { decent, lengthIn } from './support/figures.js';
import { UNUSED } from './support/follow.js';
import { connectOf, fittedOf, layoutOf, linesOf, setLines, skipOf } from './support/lines.js';
import { rewriteNumber } from './support/numbers.js';

interface Move {
  readonly line: Rational;
  readonly to: Rational;
}

/** Moves a line of a joint: in the lines the joint writes, or by giving it lines of its own instead of a pattern's. */
export const moveLine: Fix = {
  name: 'move-line',
  codes: [
    'slot-near-edge',
    'spacer-alias',
    'fence-out-of-reach',
    'slots-collide',
    'pair-too-short',
    'handed',
    'lines-mistaken',
  ],
  mayFollow: UNUSED,
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    for (const { line, to } of moves(about)) {
      const edits = moved(about, joint, line, to);
      if (edits.length > 0)
        yield { title: titled(say`Move the line ${line} to ${to} in this joint`, about.unit), edits, preferred: true };
    }
  },
};

function* moves(about: Case): Iterable<Move> {
  const { finding, unit } = about;
  const { data } = finding;
  const fitted = fittedOf(about);
  if (!fitted) return;
  const line = lengthIn(data?.line);
  const to = lengthIn(data?.to);
  if (line && to) {
    const round = decent(to, unit, to.gt(line) ? 'more' : 'less');
    if (!round.equals(to)) yield { line, to: round };
    yield { line, to };
    return;
  }
  if (line && finding.code === 'fence-out-of-reach') {
    const half = fitted.machine?.body?.div(Rational.TWO);
    const jig = about.result?.spec.shop.jig;
    const reach = jig?.reach ?? jig?.bed;
    if (half?.gt(line)) yield { line, to: decent(half, unit, 'more') };
    else if (reach?.lt(line)) yield { line, to: decent(reach, unit, 'less') };
    return;
  }
  const pair = (Array.isArray(data?.lines) ? (data.lines as readonly string[]) : []).flatMap(
    (one) => lengthIn(one) ?? [],
  );
  const slots = new Set(finding.about.slots ?? []);
  const used = fitted.halves.flatMap((half) => half.slots).filter(({ id }) => slots.has(id));
  const which = pair.length > 0 ? pair : used.map(({ fromZero }) => fromZero);
  // The nearest places to either side, further and further off.
  for (const off of OFFS) {
    for (const one of [...which].reverse()) {
      for (const by of [off, off.neg()]) {
        const at = decent(one.add(by), unit, 'more');
        if (at.sign() > 0) yield { line: one, to: at };
      }
    }
  }
}

/** How far lines are tried to be moved, mm. */
const OFFS = [5, 10, 20, 40].map((off) => Rational.of(off));

function moved(about: Case, joint: Joint, line: Rational, to: Rational) {
  const connect = connectOf(about);
  const fitted = fittedOf(about);
  if (!connect || !fitted) return [];
  const layout = joint.facts.flatMap((fact) =>
    fact.$type === 'ConnectFact' && isLayout(fact.layout) ? [fact.layout] : [],
  )[0];
  const at = linesOf(fitted).findIndex((one) => one.equals(line));
  if (at < 0) return [];
  const own = layout && layout.lines.length > 0 ? layout.lines[at] : undefined;
  const cst = own?.$cstNode;
  if (cst && /^[\d\s./]+(mm|in|["″])?$/.test(cst.text)) {
    const source = { uri: about.document.uri.toString(), start: cst.offset, end: cst.end };
    const edit = rewriteNumber(about, source, line, to);
    return edit ? [edit] : [];
  }
  const lines = linesOf(fitted).map((one, i) => (i === at ? to : one));
  return [setLines(about, joint, connect.connector, lines, skipOf(layoutOf(about, connect)))];
}
