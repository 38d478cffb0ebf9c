import {
  axisOf,
  dimensionOf,
  type FitResult,
  type FittedJoint,
  type FittedPart,
  type Half,
  highSide,
  lowSide,
  type PartId,
  type Spacer,
  thirdAxis,
} from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { code, escape, paragraphs, table } from './markdown.js';
import { referenceName, surfaceName } from './surface.js';
import { troubleWords } from './trouble.js';

/** More joints than this of one statement are named, not shown. */
const MOST = 6;

/**
 * A statement's joints: a table of both halves for each, what is cut for it, and what was left out.
 * Undefined if the fit has no joint of that statement.
 */
export function jointHover(result: FitResult, statement: string, lengths: Lengths): string | undefined {
  const joints = result.fit.joints.filter((joint) => joint.statement === statement);
  if (joints.length === 0) return undefined;
  const parts = new Map(result.fit.parts.map((part) => [part.id, part]));
  const shown = joints.slice(0, MOST);
  const rest = joints.slice(MOST).map(({ id }) => escape(id));
  return paragraphs(
    `**${escape(statement)}**`,
    ...shown.map((joint) => oneJoint(joint, parts, lengths)),
    rest.length === 0 ? '' : `and ${rest.length} more: ${rest.join('; ')}`,
  );
}

type Parts = ReadonlyMap<PartId, FittedPart>;

function oneJoint(joint: FittedJoint, parts: Parts, lengths: Lengths): string {
  const halves = joint.halves.length === 0 ? '' : halvesTable(joint, parts, lengths);
  return paragraphs(headline(joint, lengths), halves, ...cutLines(joint, parts, lengths), notes(joint, lengths));
}

/** `shelf / lh: 5 × biscuit20 by deep5 with joiner, over 538 mm of depth`. */
function headline(joint: FittedJoint, lengths: Lengths): string {
  const { connector, contact, halves, machine, pattern, run } = joint;
  const count = halves[0]?.slots.length ?? 0;
  const by = pattern === undefined ? '' : ` by ${code(pattern)}`;
  const made = machine === undefined ? '' : ` with ${code(machine.name)}`;
  const slots = connector === undefined || halves.length === 0 ? '' : `${count} × ${code(connector.name)}${by}${made}`;
  const touch =
    contact && run ? `the parts touch over ${lengths.unit(contact.hi.sub(contact.lo))} of ${dimensionOf(run)}` : '';
  return `${escape(joint.id)}: ${[slots || joint.meeting, touch].filter(Boolean).join(', ')}`;
}

/** A column for each half, a row for each thing the bench sets. */
function halvesTable(joint: FittedJoint, parts: Parts, lengths: Lengths): string {
  const rows: [string, (half: Half, part: FittedPart | undefined) => string][] = [
    ['mill into', (half, part) => `${half.role === 'mitre' ? 'mitre at its ' : ''}${surfaceName(part, half.surface)}`],
    ['slots', (half) => lengths.list(half.slots.map((slot) => slot.fromDatum)) || 'none'],
    ['from its', (half, part) => surfaceName(part, half.datum)],
    ['across', (half, part) => `${lengths.of(half.across)} from its ${referenceName(half, part)}`],
    ['depth', (half) => lengths.of(half.depth)],
    ['spacer', (half) => spacerWords(half.spacer, lengths)],
    [
      'stop',
      (half, part) => (half.stop ? `${lengths.of(half.stop.at)} from its ${surfaceName(part, half.stop.end)}` : ''),
    ],
    ['fence', (half, part) => `${surfaceName(part, half.datum)} at the ${half.hand} fence`],
    ['packer', (half) => (half.packer ? lengths.of(half.packer) : '')],
  ];
  const cells = rows
    .map(([name, cell]) => [name, ...joint.halves.map((half) => cell(half, parts.get(half.part)) || '–')])
    .filter(([, ...found]) => found.some((cell) => cell !== '–'));
  return table([lengths.units, ...joint.halves.map((half) => escape(half.part))], cells);
}

/** `none`, `22 = 10 + 12`, `22: cut a block`. */
export function spacerWords(spacer: Spacer, lengths: Lengths): string {
  const width = lengths.of(spacer.width);
  const stack = [...spacer.stack].sort((a, b) => a.compare(b)).map((piece) => lengths.of(piece));
  const off = spacer.off.isZero()
    ? ''
    : ` (${lengths.of(spacer.off.abs())} too ${spacer.off.sign() > 0 ? 'wide' : 'narrow'})`;
  switch (spacer.kind) {
    case 'none':
      return 'none';
    case 'stock':
      return stack.length === 1 && off === '' ? width : `${width} = ${stack.join(' + ')}${off}`;
    case 'cut':
      return `${width}: cut a block`;
    case 'missing':
      return stack.length === 0
        ? `${width}: not in stock`
        : `${width}: not in stock, nearest ${stack.join(' + ')}${off}`;
    case 'mark out':
      return `none; mark out ${width} further in`;
  }
}

/** Grooves, rebates and housings: how wide and deep, and where from the edges beside them. */
function cutLines(joint: FittedJoint, parts: Parts, lengths: Lengths): string[] {
  return [joint.host, joint.entering].flatMap((id) => {
    const part = parts.get(id);
    return (part?.cuts ?? []).flatMap((cut) => {
      if (part === undefined || !('box' in cut) || cut.kind === 'notch' || cut.joint !== joint.id) return [];
      const extent = (axis: 'x' | 'y' | 'z') => cut.box.hi[axis].sub(cut.box.lo[axis]);
      const across = thirdAxis(axisOf(cut.surface), cut.run);
      if (across === undefined) return [];
      const figures = `${lengths.of(extent(across))} wide, ${lengths.of(extent(axisOf(cut.surface)))} deep, ${lengths.of(extent(cut.run))} long`;
      const low = part.box && cut.box.lo[across].sub(part.box.lo[across]);
      const high = part.box && part.box.hi[across].sub(cut.box.hi[across]);
      const near =
        low && high && (high.lt(low) ? { side: highSide(across), at: high } : { side: lowSide(across), at: low });
      const where = near === undefined ? '' : `, ${lengths.of(near.at)} from its ${surfaceName(part, near.side)}`;
      return [`${cut.kind} in the ${surfaceName(part, cut.surface)} of ${escape(id)}: ${figures}${where}`];
    });
  });
}

const NOT_USED = {
  'outside contact': 'beyond where the parts touch',
  skipped: 'too near an end, skipped as the pattern says',
  'left out': 'left out as written',
} as const;

/** What has no slot although it could have, and what keeps the joint from being worked out. */
function notes(joint: FittedJoint, lengths: Lengths): string {
  const lines: string[] = [];
  if (joint.without !== undefined) lines.push(`- no connectors: ${escape(joint.without)}`);
  for (const trouble of joint.trouble) lines.push(`- ${troubleWords(trouble)}`);
  for (const [use, words] of Object.entries(NOT_USED)) {
    const unused = joint.lines.filter((line) => line.use === use).map((line) => line.fromZero);
    if (unused.length > 0) lines.push(`- no slot at ${lengths.list(unused)} from zero: ${words}`);
  }
  return lines.join('\n');
}
