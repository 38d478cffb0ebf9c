import { dimensionOf, type FittedJoint, type Half } from '@dryfit/engine';
import { type Locate, placeOf } from '../place.js';
import { approximate, exact, known, maybe } from './lengths.js';
import type { JointJson } from './schema.js';
import { turnJson } from './turn.js';

type HalfJson = JointJson['halves'][number];

/** A joint as fit.json writes it. */
export function jointJson(joint: FittedJoint, locate: Locate): JointJson {
  const { run, contact } = joint;
  return known<JointJson>({
    id: joint.id,
    statement: joint.statement,
    place: placeOf(joint.source, locate),
    verb: joint.verb,
    meeting: joint.meeting,
    entering: { part: joint.entering, side: joint.enteringSide },
    host: { part: joint.host, side: joint.hostSide },
    run: run && dimensionOf(run),
    contact: contact && { from: exact(contact.lo), to: exact(contact.hi) },
    connector: joint.connector?.name,
    machine: joint.machine?.name,
    pattern: joint.pattern,
    without: joint.without,
    datum: joint.datum,
    reference: joint.reference,
    zero: maybe(joint.zero),
    lines: [...joint.lines]
      .sort((a, b) => a.fromZero.compare(b.fromZero))
      .map((line) => ({ fromZero: exact(line.fromZero), use: line.use })),
    halves: joint.halves.map(halfJson),
  });
}

function halfJson(half: Half): HalfJson {
  const { spacer, stop } = half;
  return known<HalfJson>({
    part: half.part,
    turn: half.turn && turnJson(half.turn),
    surface: half.surface,
    role: half.role,
    datum: half.datum,
    hand: half.hand,
    setback: exact(half.setback),
    spacer: { kind: spacer.kind, width: exact(spacer.width), stack: spacer.stack.map(exact), off: exact(spacer.off) },
    reference: { kind: half.from.kind, side: half.from.side, distance: exact(half.across) },
    stop: stop && { end: stop.end, distance: exact(stop.at) },
    packer: maybe(half.packer),
    depth: exact(half.depth),
    slots: [...half.slots]
      .sort((a, b) => a.number - b.number)
      .map((slot) => ({
        id: slot.id,
        number: slot.number,
        fromZero: exact(slot.fromZero),
        fromDatum: exact(slot.fromDatum),
        centre: { x: exact(slot.centre.x), y: exact(slot.centre.y), z: exact(slot.centre.z) },
        length: approximate(slot.length),
      })),
  });
}
