import type { FitResult, FittedJoint, FittedPart, PartId } from '@dryfit/engine';
import { errorLines } from './errors.js';
import { halvesTable } from './halves.js';
import type { Lengths } from './lengths.js';
import { notUsed } from './lines.js';
import { code, paragraphs, plain } from './markdown.js';
import { recessLines } from './recess.js';
import { troubleWords } from './trouble.js';

/** More tables than this of one statement are named, not shown. */
const MOST = 6;

/** Joints of like parts with one host, told in one table. */
interface Alike {
  readonly joints: readonly [FittedJoint, ...FittedJoint[]];
}

type Parts = ReadonlyMap<PartId, FittedPart>;

/**
 * A statement's joints: a table of both halves for each, what is cut for it, and what was left out; joints of like
 * parts with one host share a table. Undefined if the fit has no joint of that statement.
 */
export function jointHover(result: FitResult, statement: string, lengths: Lengths): string | undefined {
  const joints = result.fit.joints.filter((joint) => joint.statement === statement);
  if (joints.length === 0) return undefined;
  const parts: Parts = new Map(result.fit.parts.map((part) => [part.id, part]));
  const groups = alike(joints, parts);
  const rest = groups.slice(MOST).flatMap(({ joints: hidden }) => hidden.map(({ id }) => plain(id)));
  const jig = result.spec.shop.jig !== undefined;
  return paragraphs(
    `**${plain(statement)}**`,
    ...groups.slice(0, MOST).map((group) => shown(result, group, parts, lengths, jig)),
    rest.length === 0 ? '' : `and ${rest.length} more: ${rest.join('; ')}`,
  );
}

function alike(joints: readonly FittedJoint[], parts: Parts): Alike[] {
  const groups = new Map<string, [FittedJoint, ...FittedJoint[]]>();
  for (const joint of joints) {
    const { entering, enteringSide, host, hostSide } = joint;
    const key = JSON.stringify([parts.get(entering)?.kind ?? entering, enteringSide, host, hostSide, notes(joint)]);
    const group = groups.get(key);
    if (group) group.push(joint);
    else groups.set(key, [joint]);
  }
  return [...groups.values()].map((group) => ({ joints: group }));
}

function shown(result: FitResult, { joints }: Alike, parts: Parts, lengths: Lengths, jig: boolean): string {
  const [first] = joints;
  return paragraphs(
    headline(joints, parts, lengths),
    first.halves.length === 0 ? '' : halvesTable(joints, parts, lengths, jig),
    joints.flatMap((joint) => recessLines(joint, parts, lengths)).join('\n'),
    errorLines(result, first, lengths).join('\n'),
    notes(first, lengths),
  );
}

/** `shelf / lh: 5 × biscuit20 by deep5 with joiner; the parts touch over 538 mm of depth`. */
function headline(joints: Alike['joints'], parts: Parts, lengths: Lengths): string {
  const [{ connector, contact, entering, halves, host, machine, meeting, mitre, pattern }] = joints;
  const names = joints.map((joint) => parts.get(joint.entering)?.index).filter((index) => index !== undefined);
  const kind = parts.get(entering)?.kind ?? entering;
  const who = `${plain(joints.length === 1 ? entering : `${kind} ${names.join(', ')}`)} / ${plain(host)}`;
  const by = pattern === undefined ? '' : ` by ${code(pattern)}`;
  const made = machine === undefined ? '' : ` with ${code(machine.name)}`;
  const count = halves[0]?.slots.length ?? 0;
  const what =
    connector === undefined || halves.length === 0 ? meeting : `${count} × ${code(connector.name)}${by}${made}`;
  const touch = contact ? `; the parts touch over ${lengths.unit(contact.hi.sub(contact.lo))}` : '';
  const sawn = mitre && mitre.angle !== 45 ? `; both ends are sawn ${Number(mitre.angle.toFixed(2))}° off square` : '';
  return `${who}: ${what}${touch}${sawn}`;
}

/** What has no slot although it could have, and what keeps the joint from being worked out. */
function notes(joint: FittedJoint, lengths?: Lengths): string {
  const lines: string[] = [];
  if (joint.without !== undefined) lines.push(`- no connectors: ${plain(joint.without)}`);
  for (const trouble of joint.trouble) lines.push(`- ${troubleWords(trouble)}`);
  for (const { at, why } of notUsed(joint))
    lines.push(`- no slot at ${lengths?.list(at) ?? at.join()} from zero: ${why}`);
  return lines.join('\n');
}
