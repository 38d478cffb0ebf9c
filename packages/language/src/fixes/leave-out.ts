import { type Rational, say } from '@dryfit/engine';
import { isLeaveOutFact, type Joint } from '../generated/ast.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { writeInto } from './support/braces.js';
import { distinct, jointOf, titled } from './support/facts.js';
import { lengthIn, writtenAs } from './support/figures.js';
import { UNUSED } from './support/follow.js';
import { fittedOf } from './support/lines.js';

/** Leaves a line of a joint's layout out, in this joint only. */
export const leaveOut: Fix = {
  name: 'leave-out',
  codes: [
    'slot-near-edge',
    'fence-out-of-reach',
    'slots-collide',
    'spacer-alias',
    'pair-too-short',
    'handed',
    'lines-mistaken',
  ],
  mayFollow: UNUSED,
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    const lines = linesIn(about);
    for (const line of lines) {
      yield {
        title: titled(say`Leave the line ${line} out here: leave out ${line}`, about.unit),
        edits: [leftOut(about, joint, [line])],
      };
    }
  },
};

function linesIn(about: Case): readonly Rational[] {
  const { data, about: what } = about.finding;
  const line = lengthIn(data?.line);
  if (line) return [line];
  const given = (Array.isArray(data?.lines) ? (data.lines as readonly string[]) : []).flatMap(
    (one) => lengthIn(one) ?? [],
  );
  if (given.length > 0) return [...given].reverse();
  const slots = fittedOf(about)?.halves.flatMap((half) => half.slots) ?? [];
  return distinct(slots.filter(({ id }) => what.slots?.includes(id)).map(({ fromZero }) => fromZero));
}

function leftOut({ unit }: Case, joint: Joint, lines: readonly Rational[]): FileEdit {
  const known = joint.facts.find(isLeaveOutFact);
  const text = lines.map((line) => writtenAs(line, unit)).join(', ');
  const last = known?.lines.at(-1)?.$cstNode;
  if (!known || !last) return writeInto(joint, `leave out ${text}`);
  return { uri: last.root.astNode.$document?.uri.toString() ?? '', start: last.end, end: last.end, text: `, ${text}` };
}
