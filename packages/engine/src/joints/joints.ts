import type { FittedJoint, Half, Trouble } from '../fit/fit.js';
import { SQUARE_MITRE } from '../geometry/mitre.js';
import { Rational } from '../number/rational.js';
import { enteringParts, type Meeting, meetings } from '../sizes/hosts.js';
import type { Solved } from '../sizes/solved.js';
import { thicknessAxis } from '../spec/sides.js';
import type { Connect, JointStatement, PartId, PartSpec } from '../spec/spec.js';
import type { Connector, Layout, Machine } from '../spec/stock.js';
import { fitTurned, turnedMeetings } from '../turned/joints.js';
import { acrossOf } from './across.js';
import { Bench } from './bench.js';
import { contactRange } from './contact.js';
import { datumOf, inward } from './datum.js';
import { type HalfPlan, halfOf } from './half.js';
import { layOut } from './layout.js';
import { type Kind, kindOf } from './meeting.js';
import { type References, referencesOf } from './reference.js';

/** Works out every joint of a solved cabinet: one for each entering part and each host it meets. */
export function fitJoints(solved: Solved): readonly FittedJoint[] {
  const bench = new Bench(solved);
  const ids = new Map<string, number>();
  const joints: FittedJoint[] = [];
  for (const statement of solved.spec.statements) {
    if (statement.kind !== 'joint') continue;
    const met = meetings(statement, solved.system.planes);
    for (const part of enteringParts(statement, solved.system.planes)) {
      const idWith = (host: PartId): string => {
        const name = `${part.id} / ${host}`;
        const nth = (ids.get(name) ?? 0) + 1;
        ids.set(name, nth);
        return nth === 1 ? name : `${name} (${nth})`;
      };
      if (part.on) {
        for (const turned of turnedMeetings(solved, statement, part)) {
          const joint = turned && fitTurned(solved, statement, part, turned, idWith(turned.host), fitJoint);
          if (joint) joints.push(joint);
        }
        continue;
      }
      for (const meeting of met) {
        const host = solved.system.planes.part(meeting.host);
        // A part that meets a turned one otherwise, or a cant, is told by a check.
        if (!host || host.on || meeting.plane?.of === 'cant') continue;
        joints.push(fitJoint(solved, bench, statement, part, host, meeting, idWith(host.id)));
      }
    }
  }
  return joints;
}

function fitJoint(
  solved: Solved,
  bench: Bench,
  joint: JointStatement,
  part: PartSpec,
  host: PartSpec,
  meeting: Meeting,
  id: string,
): FittedJoint {
  const kind = kindOf(joint, part, host, meeting);
  const contact = contactRange(solved, part, meeting, kind);
  // One object filled in step by step: every joint then has the same shape, which is far quicker than copying.
  const fitted: Draft = {
    id,
    statement: joint.id,
    source: joint.source,
    verb: joint.verb,
    entering: part.id,
    host: host.id,
    enteringSide: meeting.enteringSide,
    hostSide: hostSurface(joint, meeting),
    axis: meeting.axis,
    meeting: kind.meeting,
    mitre: mitreOf(joint, meeting),
    turn: undefined,
    run: kind.run,
    contact,
    connector: undefined,
    machine: undefined,
    pattern: undefined,
    without: undefined,
    reference: undefined,
    datum: undefined,
    zero: undefined,
    lines: [],
    halves: [],
    trouble: [],
  };

  const plan = connectionOf(solved, joint);
  if (plan.kind === 'none') {
    fitted.without = plan.reason;
    return plan.forgotten ? troubled(fitted, 'no connectors') : fitted;
  }
  const { connector, machine, layout } = plan;
  fitted.connector = connector;
  fitted.machine = machine;
  fitted.pattern = plan.pattern;
  if (kind.run === undefined || kind.across === undefined) return troubled(fitted, 'faces meet');
  if (kind.crossed) return troubled(fitted, 'edges cross');

  const references = referencesOf(joint, kind, meeting.enteringSide);
  const datum = datumOf(solved, bench, joint, kind.run);
  fitted.reference = references.entering;
  fitted.datum = datum.side;
  fitted.zero = datum.zero;
  if (references.trouble !== undefined) troubled(fitted, references.trouble);
  if (datum.trouble !== undefined) troubled(fitted, datum.trouble);
  if (kind.meeting === 'mitre' && unequal(solved, part, host)) troubled(fitted, 'mitre unequal');
  if (fitted.trouble.length > 0 || datum.zero === undefined) return fitted;
  if (!contact) return sizesKnown(solved, part, host) ? troubled(fitted, 'no contact') : fitted;

  const ends = [inward(datum.side, datum.zero, contact.lo), inward(datum.side, datum.zero, contact.hi)] as const;
  const stretch = { from: Rational.min(...ends), to: Rational.max(...ends) };
  fitted.lines = layOut(
    layout,
    stretch,
    joint.leaveOut.map((written) => written.value),
  );
  fitted.halves = bothHalves(solved, bench, {
    joint,
    part,
    host,
    meeting,
    kind,
    references,
    connector,
    machine,
    id,
    datum: { ...datum, zero: datum.zero },
    lines: fitted.lines,
  });
  return fitted.halves.some((half) => half.setback.sign() < 0) ? troubled(fitted, 'datum inside') : fitted;
}

/** A joint while it is being worked out. */
type Draft = { -readonly [K in keyof FittedJoint]: FittedJoint[K] };

function troubled(joint: Draft, trouble: Trouble): FittedJoint {
  joint.trouble = [...joint.trouble, trouble];
  return joint;
}

/** At a square corner each part's toe lies on the side where the other has its end. */
const mitreOf = (joint: JointStatement, meeting: Meeting): FittedJoint['mitre'] =>
  joint.verb === 'mitre'
    ? { entering: joint.outer?.side ?? meeting.hostSide, host: meeting.enteringSide, angle: SQUARE_MITRE }
    : undefined;

const hostSurface = (joint: JointStatement, meeting: Meeting) =>
  joint.verb === 'mitre' && joint.outer ? joint.outer.side : meeting.hostSide;

type Connection =
  | { readonly kind: 'none'; readonly reason: string | undefined; readonly forgotten: boolean }
  | {
      readonly kind: 'by';
      readonly connector: Connector;
      readonly machine: Machine;
      readonly layout: Layout;
      readonly pattern: string | undefined;
    };

/** Verbs whose parts hold one another without connectors unless the joint itself names some. */
const HELD: readonly string[] = ['groove', 'rebate', 'house', 'rest'];

function connectionOf(solved: Solved, joint: JointStatement): Connection {
  const { shop } = solved.spec;
  const connect: Connect | undefined = joint.connect ?? (HELD.includes(joint.verb) ? undefined : solved.spec.connect);
  if (!connect) return { kind: 'none', reason: undefined, forgotten: !HELD.includes(joint.verb) };
  if (connect.kind === 'none') return { kind: 'none', reason: connect.reason, forgotten: false };
  const connector = shop.connectors.get(connect.connector);
  const machine = connector && shop.machines.get(connector.machine);
  const pattern = typeof connect.pattern === 'string' ? connect.pattern : undefined;
  const layout = typeof connect.pattern === 'string' ? shop.patterns.get(connect.pattern)?.layout : connect.pattern;
  // A name that means nothing has its own finding where it is written.
  if (!connector || !machine || !layout) return { kind: 'none', reason: undefined, forgotten: false };
  return { kind: 'by', connector, machine, layout, pattern };
}

function unequal(solved: Solved, part: PartSpec, host: PartSpec): boolean {
  const a = solved.extent(part.id, thicknessAxis(part.attitude));
  const b = solved.extent(host.id, thicknessAxis(host.attitude));
  return a !== undefined && b !== undefined && !a.equals(b);
}

const sizesKnown = (solved: Solved, ...parts: readonly PartSpec[]): boolean =>
  parts.every((part) =>
    (['left', 'right', 'front', 'rear', 'bottom', 'top'] as const).every(
      (side) => solved.at(part.id, side) !== undefined,
    ),
  );

function bothHalves(
  solved: Solved,
  bench: Bench,
  it: {
    readonly joint: JointStatement;
    readonly part: PartSpec;
    readonly host: PartSpec;
    readonly meeting: Meeting;
    readonly kind: Kind;
    readonly references: References;
    readonly connector: Connector;
    readonly machine: Machine;
    readonly id: string;
    readonly datum: ReturnType<typeof datumOf> & { readonly zero: Rational };
    readonly lines: FittedJoint['lines'];
  },
): readonly Half[] {
  const { joint, part, host, meeting, kind, references } = it;
  if (kind.run === undefined || kind.across === undefined) return [];
  if (references.entering === undefined || references.host === undefined) return [];
  const edgePart = kind.enteringRole === 'face' ? host : part;
  const referencePlane = solved.at(edgePart.id, references.entering);
  const contactPlane = meeting.plane ? solved.plane(meeting.plane) : solved.at(part.id, meeting.enteringSide);
  if (referencePlane === undefined || contactPlane === undefined) return [];
  const shared = {
    id: it.id,
    joint,
    run: kind.run,
    normalAxis: meeting.axis,
    acrossAxis: kind.across,
    connector: it.connector,
    machine: it.machine,
    datum: it.datum,
    zero: it.datum.zero,
    referencePlane,
    c: acrossOf(solved.spec, joint, edgePart, it.machine),
    lines: it.lines,
    contactPlane,
  };
  const mitred = kind.meeting === 'mitre';
  const outer = joint.outer?.side;
  const entering: HalfPlan = {
    part,
    surface: meeting.enteringSide,
    role: kind.enteringRole,
    reference: references.entering,
    from: references.from,
    mitre: mitred && outer ? { outer, angle: SQUARE_MITRE } : undefined,
  };
  const hostHalf: HalfPlan = {
    part: host,
    surface: hostSurface(joint, meeting),
    role: kind.hostRole,
    reference: references.host,
    from: references.from,
    mitre: mitred ? { outer: meeting.enteringSide, angle: SQUARE_MITRE } : undefined,
  };
  const halves = [halfOf(solved, bench, shared, entering), halfOf(solved, bench, shared, hostHalf)];
  return halves.every((half) => half !== undefined) ? (halves as Half[]) : [];
}
