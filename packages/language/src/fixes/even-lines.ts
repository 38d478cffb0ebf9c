import { type FitResult, type FittedJoint, isHigh, Rational, say } from '@dryfit/engine';
import { isJoint, type Joint } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { layoutOf, setLines, skipOf } from './support/lines.js';
import { itemAt } from './support/place.js';

/**
 * Lays the lines of joints out alike from both ends of two parts that are nearly the same, so that they become one
 * piece: each line in the middle between where it is and where its twin would have it.
 */
export const evenLines: Fix = {
  name: 'even-lines',
  codes: ['handed'],
  mayFollow: { 'never-used': 'the pattern that was laid out by may have no other use in the file' },
  *offer(about): Iterable<Cure> {
    const { result } = about;
    const uneven = result ? unevenJoints(result, about.finding.about.parts ?? []) : [];
    const edits = uneven.flatMap(({ joint, lines }) => {
      const source = result?.spec.statements.find(({ id }) => id === joint.statement)?.source;
      const item = source && itemAt(about, source);
      return isJoint(item) ? [edit(about, item, joint, lines)] : [];
    });
    const [first] = uneven;
    if (!first || edits.length < uneven.length) return;
    yield { title: titled(titleFor(uneven.length, first), about.unit), edits };
  },
};

interface Even {
  readonly joint: FittedJoint;
  readonly lines: readonly Rational[];
}

const titleFor = (count: number, { joint, lines }: Even) =>
  count === 1
    ? say`Lay the lines out alike from both ends of ${joint.host}: lines ${lines.flatMap((line, i) => (i === 0 ? [line] : [', ', line]))}`
    : say`Lay the lines of ${String(count)} joints out alike from both ends of ${joint.host}`;

/** The joints that some parts host whose lines are not the same from both of the host's ends, once a statement. */
function unevenJoints({ fit }: FitResult, parts: readonly string[]): readonly Even[] {
  const seen = new Set<string>();
  return fit.joints.flatMap((joint): Even[] => {
    if (!parts.includes(joint.host) || seen.has(joint.statement)) return [];
    const even = evened(joint, fit.parts.find(({ id }) => id === joint.host)?.box);
    if (!even) return [];
    seen.add(joint.statement);
    return [{ joint, lines: even }];
  });
}

type Box = NonNullable<FitResult['fit']['parts'][number]['box']>;

/** Where the lines are to be, from zero; undefined where they are so already. */
function evened({ run, zero, datum, halves }: FittedJoint, box: Box | undefined): readonly Rational[] | undefined {
  const slots = halves.at(-1)?.slots ?? [];
  if (!run || !zero || !datum || !box || slots.length === 0) return undefined;
  const lines = slots.map(({ fromZero }) => fromZero).sort((a, b) => a.compare(b));
  const ends = box.lo[run].add(box.hi[run]).sub(zero.mul(TWO));
  const both = isHigh(datum) ? ends.neg() : ends;
  const even = lines.map((line, i) => line.add(both.sub(lines.at(-1 - i) ?? line)).mul(HALF));
  return even.every((line, i) => lines[i]?.equals(line)) ? undefined : even;
}

const HALF = Rational.of(1, 2);
const TWO = Rational.of(2);

function edit(about: Case, item: Joint, joint: FittedJoint, lines: readonly Rational[]) {
  const own = about.result?.spec.statements.find(({ id }) => id === joint.statement);
  const connect = (own?.kind === 'joint' ? own.connect : undefined) ?? about.result?.spec.connect;
  const skip = connect?.kind === 'by' ? skipOf(layoutOf(about, connect)) : undefined;
  return setLines(about, item, joint.connector?.name ?? '', lines, skip);
}
