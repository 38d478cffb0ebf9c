import {
  AXES,
  type Axis,
  axisOf,
  dimensionOf,
  type FittedPart,
  highSide,
  lowSide,
  Rational,
  SIDES,
  type Side,
  thicknessAxis,
  thirdAxis,
} from '@dryfit/engine';
import { isFlushFact, isJoint, type Joint } from '../generated/ast.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { writeInCabinet, writeInto } from './support/braces.js';
import { decent, writtenAs } from './support/figures.js';
import { because, MILLING, SIZES } from './support/follow.js';
import { lineEnd, statementOf, textIn } from './support/place.js';

/** A loose side of a part. */
interface Loose {
  readonly part: string;
  readonly side: Side;
}

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
  mayFollow: because(
    'nothing is milled or compared until the part has its size and place',
    ...MILLING,
    ...SIZES,
    'reference-missing',
    'no-connectors',
    'mitre-no-room',
    'sheet-too-short',
    'too-big-for-jig',
  ),
  *offer(about): Iterable<Cure> {
    const loose = looseSides(about);
    if (loose.length === 0) return;
    yield* asOthers(about, loose);
    for (const lines of choices(about, loose)) {
      if (lines.length === 0) continue;
      yield {
        title: `Write ${lines.map(({ text, joint }) => (joint ? `${text} in its joint` : text)).join(', and ')}`,
        edits: edits(about, lines),
      };
    }
  },
};

function looseSides({ finding, result }: Case): readonly Loose[] {
  const planes = Array.isArray(finding.data?.planes) ? (finding.data.planes as readonly string[]) : [];
  return planes.flatMap((plane) => {
    const at = plane.lastIndexOf('.');
    const [part, side] = [plane.slice(0, at), SIDES.find((one) => one === plane.slice(at + 1))];
    return side && result?.fit.parts.some(({ id }) => id === part) ? [{ part, side }] : [];
  });
}

/** Joins a part that no joint names as another of its attitude is joined. */
function* asOthers(about: Case, loose: readonly Loose[]): Iterable<Cure> {
  const { cabinet, result } = about;
  const [lead] = loose;
  const own = lead && part(about, lead.part);
  if (!cabinet || !own || !result || loose.some((one) => one.part !== own.id) || jointInto(about, own.id)) return;
  const axis = thicknessAxis(own.attitude);
  for (const statement of result.spec.statements) {
    if (statement.kind !== 'joint' || statement.between.length !== 1) continue;
    const like = statement.entering.some((id) => part(about, id)?.attitude === own.attitude);
    const pair = statement.between[0];
    const along = pair && part(about, pair.low.part);
    if (!like || !pair || !along || statement.verb !== 'butt') continue;
    const third = thirdAxis(axis, thicknessAxis(along.attitude));
    if (!third) continue;
    const joint = `butt ${own.id} between ${pair.low.part} and ${pair.high.part}`;
    for (const [place] of between(about, own.id, axis, undefined)) {
      const fact = place?.text.replace(/^.*?(centred|[a-z]+ \S+ (?:above|behind|right of)) /, '$1 ') ?? '';
      const reference = `reference ${lowSide(axis)}`;
      const line = `${joint} { ${fact}  flush ${highSide(third)}, ${lowSide(third)}  ${reference} }`;
      yield { title: `Join it as others are: ${line}`, edits: [writeInCabinet(cabinet, line)] };
    }
  }
}

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
  const fitted = part(about, lead);
  const sized = fitted?.extent[axis] === undefined;
  if (joint && sized && own.length > 1) yield own.map((side) => ({ text: `flush ${side}`, joint: joint.node }));
  if (joint) for (const side of own) yield [{ text: `flush ${side}`, joint: joint.node }];
  const size = sized ? sizeLike(about, fitted, axis) : undefined;
  if (size !== undefined) {
    const dimension = { text: `${dimensionOf(axis)} ${size} of ${lead}` };
    yield [dimension];
    for (const side of own) {
      const anchor = anchorFor(about, lead, side);
      if (anchor !== undefined) yield [dimension, { text: `${lead}.${side} flush with ${anchor}` }];
    }
  }
  if (!sized) yield* between(about, lead, axis, joint?.node);
  for (const side of own.length > 0 ? own : [lowSide(axis), highSide(axis)]) {
    const anchor = anchorFor(about, lead, side);
    if (anchor !== undefined) yield [{ text: `${lead}.${side} flush with ${anchor}` }];
  }
}

/** Midway between the two parts that lie across the axis furthest apart, or a decent distance behind the first. */
function* between(about: Case, lead: string, axis: Axis, joint: Joint | undefined): Iterable<readonly Line[]> {
  const across = (about.result?.fit.parts ?? []).filter(
    ({ id, attitude, box }) => id !== lead && box !== undefined && thicknessAxis(attitude) === axis,
  );
  const sorted = [...across].sort((a, b) => (a.box && b.box ? a.box.lo[axis].compare(b.box.lo[axis]) : 0));
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low?.box || !high?.box || low === high) return;
  const centred = `centred between ${low.id} and ${high.id}`;
  yield [joint ? { text: centred, joint } : { text: `${lead} ${centred}` }];
  const room = high.box.lo[axis].sub(low.box.hi[axis]);
  for (const share of [2, 3]) {
    const by = writtenAs(decent(room.div(Rational.of(share)), about.unit, 'less'), about.unit);
    const fact = `${lowSide(axis)} ${by} ${TOWARD[axis]} ${low.id}.${highSide(axis)}`;
    yield [joint ? { text: fact, joint } : { text: `${lead}.${fact}` }];
  }
}

const TOWARD: Record<Axis, string> = { x: 'right of', y: 'behind', z: 'above' };

const part = ({ result }: Case, id: string): FittedPart | undefined => result?.fit.parts.find((one) => one.id === id);

/** The joint by which a part enters another. */
function jointInto(about: Case, id: string): { readonly part: string; readonly node: Joint } | undefined {
  const statement = about.result?.spec.statements.find((one) => one.kind === 'joint' && one.entering.includes(id));
  const node = statement && statementOf(about, statement.id);
  return node && isJoint(node) ? { part: id, node } : undefined;
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
  if (lines.some((line) => !line.startsWith('flush '))) return writeInto(joint, lines.join('  '));
  if (!last) return writeInto(joint, `flush ${sides}`);
  return { uri: last.root.astNode.$document?.uri.toString() ?? '', start: last.end, end: last.end, text: `, ${sides}` };
}

function together({ document }: Case, lines: readonly string[], write: (line: string) => FileEdit): FileEdit {
  const edit = write(lines[0] ?? '');
  const before = edit.text.slice(0, edit.text.indexOf(lines[0] ?? ''));
  const between = before.includes('\n') ? before : `${lineEnd(textIn(document))}  `;
  return { ...edit, text: edit.text.replace(lines[0] ?? '', lines.join(between)) };
}
