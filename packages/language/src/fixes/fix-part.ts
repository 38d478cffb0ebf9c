import {
  AXES,
  type Axis,
  axisOf,
  dimensionOf,
  type FittedPart,
  highSide,
  lowSide,
  type Rational,
  type Side,
  thicknessAxis,
} from '@dryfit/engine';
import { isFlushFact, type Joint } from '../generated/ast.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { writeInCabinet, writeInto } from './support/braces.js';
import { writtenAs } from './support/figures.js';
import { ONCE_FIXED } from './support/follow.js';
import { factsBetween, jointInto, type Loose, looseSides, partCalled } from './support/loose.js';
import { lineEnd, textIn } from './support/place.js';

/** A line to write: a fact in the joint by which the part enters, or a statement of the cabinet. */
interface Line {
  readonly text: string;
  readonly joint?: Joint | undefined;
}

/** Writes what fixes a part: flush with what it enters, as large as what is like it, or in one plane with another part. */
export const fixPart: Fix = {
  name: 'fix-part',
  codes: ['part-not-fixed'],
  most: 3,
  mayFollow: ONCE_FIXED,
  *offer(about): Iterable<Cure> {
    const loose = looseSides(about);
    if (loose.length === 0) return;
    for (const lines of choices(about, loose)) {
      if (lines.length === 0) continue;
      yield {
        title: `Write ${lines.map(({ text, joint }) => (joint ? `${text} in its joint` : text)).join(', and ')}`,
        edits: edits(about, lines),
      };
    }
  },
};

/** One way to fix them all after another: the same idea for every axis. */
function* choices(about: Case, loose: readonly Loose[]): Iterable<readonly Line[]> {
  const axes = AXES.filter((axis) => loose.some(({ side }) => axisOf(side) === axis));
  const byAxis = axes.map((axis) => [
    ...linesFor(
      about,
      loose.filter(({ side }) => axisOf(side) === axis),
      axis,
    ),
  ]);
  const most = Math.max(...byAxis.map((lines) => lines.length));
  for (let i = 0; i < most; i++) yield byAxis.flatMap((lines) => lines[i] ?? lines.at(-1) ?? []);
}

/** Ways to fix the loose sides of one axis. */
function* linesFor(about: Case, loose: readonly Loose[], axis: Axis): Iterable<readonly Line[]> {
  const parts = [...new Set(loose.map(({ part }) => part))];
  const lead = (about.finding.about.parts ?? parts).find((id) => parts.includes(id)) ?? '';
  const joint = jointInto(about, lead);
  const own = loose.filter(({ part }) => part === lead).map(({ side }) => side);
  const fitted = partCalled(about, lead);
  const sized = fitted?.extent[axis] === undefined;
  if (joint && sized && own.length > 1) yield own.map((side) => ({ text: `flush ${side}`, joint }));
  if (joint) for (const side of own) yield [{ text: `flush ${side}`, joint }];
  const size = sized ? sizeLike(about, fitted, axis) : undefined;
  if (size !== undefined) {
    const dimension = { text: `${dimensionOf(axis)} ${size} of ${lead}` };
    yield [dimension];
    for (const side of own) {
      const anchor = anchorFor(about, lead, side);
      if (anchor !== undefined) yield [dimension, { text: `${lead}.${side} flush with ${anchor}` }];
    }
  }
  if (!sized)
    for (const fact of factsBetween(about, lead, axis)) {
      const statement = fact.startsWith('centred') ? `${lead} ${fact}` : `${lead}.${fact}`;
      yield [joint ? { text: fact, joint } : { text: statement }];
    }
  for (const side of own.length > 0 ? own : [lowSide(axis), highSide(axis)]) {
    const anchor = anchorFor(about, lead, side);
    if (anchor !== undefined) yield [{ text: `${lead}.${side} flush with ${anchor}` }];
  }
}

/** The size that another part has, one that stands the same way if there is one; else the largest of any. */
function sizeLike({ result, unit }: Case, like: FittedPart | undefined, axis: Axis): string | undefined {
  const parts = (result?.fit.parts ?? []).filter(({ id }) => id !== like?.id);
  const own = parts.filter(({ extent, attitude }) => extent[axis]?.sign() === 1 && thicknessAxis(attitude) !== axis);
  const near = [...own].sort((a, b) => score(b, like) - score(a, like))[0]?.extent[axis];
  const all = parts.flatMap(({ extent }) => AXES.flatMap((other) => extent[other] ?? []));
  const size = near ?? all.reduce<Rational | undefined>((most, one) => (most?.ge(one) ? most : one), undefined);
  return size && writtenAs(size, unit);
}

const score = (part: FittedPart, like: FittedPart | undefined): number =>
  (part.attitude === like?.attitude ? 2 : 0) + (part.material === like?.material ? 1 : 0);

/** A part that has its place along the axis of a side, of those it meets if it can be. */
function anchorFor({ result }: Case, id: string, side: Side): string | undefined {
  const hosts = (result?.fit.joints ?? []).flatMap(({ entering, host }) =>
    entering === id ? [host] : host === id ? [entering] : [],
  );
  const all = [...hosts, ...(result?.fit.parts ?? []).map((one) => one.id)];
  return all.find((other) => other !== id && result?.fit.parts.find((one) => one.id === other)?.extent[axisOf(side)]);
}

/** All lines at once: those for one place one behind the other. */
function edits(about: Case, lines: readonly Line[]): readonly FileEdit[] {
  const { cabinet } = about;
  if (!cabinet) return [];
  const made: FileEdit[] = [];
  for (const joint of new Set(lines.map((line) => line.joint))) {
    const own = lines.filter((line) => line.joint === joint).map(({ text }) => text);
    if (!joint) made.push(together(about, own, (line) => writeInCabinet(cabinet, line)));
    else made.push(flushInto(joint, own));
  }
  return made;
}

/** Sides go to the flush that is there. */
function flushInto(joint: Joint, lines: readonly string[]): FileEdit {
  const sides = lines.map((line) => line.replace('flush ', '')).join(', ');
  const last = joint.facts.find(isFlushFact)?.$cstNode;
  if (lines.some((line) => !line.startsWith('flush '))) return writeInto(joint, ...lines);
  if (!last) return writeInto(joint, `flush ${sides}`);
  return { uri: last.root.astNode.$document?.uri.toString() ?? '', start: last.end, end: last.end, text: `, ${sides}` };
}

function together({ document }: Case, lines: readonly string[], write: (line: string) => FileEdit): FileEdit {
  const edit = write(lines[0] ?? '');
  const before = edit.text.slice(0, edit.text.indexOf(lines[0] ?? ''));
  const between = before.includes('\n') ? before : `${lineEnd(textIn(document))}  `;
  return { ...edit, text: edit.text.replace(lines[0] ?? '', lines.join(between)) };
}
