import type { FittedJoint, FittedPart } from '../fit/fit.js';
import { say } from '../fit/text.js';
import type { Bounds } from '../geometry/solid.js';
import type { Vector } from '../geometry/vector.js';
import { addBounded, type Bounded, boundedOf } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { bodyOf } from '../solids/body.js';
import { type Placed, type SharedRoom, sharedRoom } from '../solids/overlap.js';
import { pairsWithin } from '../solids/sweep.js';
import { AXES, type Axis } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { byId } from './support/alike.js';
import { MOVES } from './support/names.js';
import { pressed } from './support/openings.js';
import { perContext } from './support/remember.js';

/** Two parts take up the same room. */
export const partsOverlap: Check = {
  code: 'parts-overlap',
  severity: 'error',
  *run(context) {
    // A part whose size comes out the wrong way round has a finding of its own.
    const placed = context.fit.parts.flatMap((part) => {
      const body = bodyOf(part);
      return body ? [{ part, body, bounds: body.bounds }] : [];
    });
    const found: Found[] = [];
    for (const [a, b] of pairsWithin(placed, 0)) {
      const [one, two] = byId(a.part.id, b.part.id) <= 0 ? [a, b] : [b, a];
      const [shared] = sharedRoom(one, two, (recess, other) => makesWay(context, recess.joint, other));
      if (shared && !pressed(context, one.part.id, two.part.id)) found.push(finding(context, one, two, shared));
    }
    yield* found.sort((a, b) => byId(first(a), first(b)) || byId(second(a), second(b)));
  },
};

const first = ({ about }: Found): string => about.parts?.[0] ?? '';
const second = ({ about }: Found): string => about.parts?.[1] ?? '';

/** Whether a recess is made for this part. */
function makesWay(context: CheckContext, statement: string | undefined, other: FittedPart): boolean {
  const joint = statement === undefined ? undefined : context.statement(statement);
  return joint?.kind === 'joint' && joint.entering.includes(other.id);
}

type Length = Rational | Bounded;
const size = (length: Length): number => (length instanceof Rational ? length.toNumber() : length.value);

/** The first joint between two parts, by their names. */
const jointsBetween = perContext(({ fit }): ReadonlyMap<string, FittedJoint> => {
  const joints = new Map<string, FittedJoint>();
  for (const joint of fit.joints) {
    for (const pair of [`${joint.entering}\n${joint.host}`, `${joint.host}\n${joint.entering}`]) {
      if (!joints.has(pair)) joints.set(pair, joint);
    }
  }
  return joints;
});

/**
 * How far one of two parts has to move along an axis to leave the room they share, mm. Where one reaches past the other
 * at both ends that is more than they overlap by.
 */
function wayOut(axis: Axis, { body: { box: a } }: Placed, { body: { box: b } }: Placed, extent: Length): Length {
  const shared = Rational.min(a.hi[axis], b.hi[axis]).sub(Rational.max(a.lo[axis], b.lo[axis]));
  const out = Rational.min(a.hi[axis].sub(b.lo[axis]), b.hi[axis].sub(a.lo[axis]));
  const more = out.sub(shared);
  return extent instanceof Rational ? extent.add(more) : addBounded(extent, boundedOf(more));
}

function finding(context: CheckContext, a: Placed, b: Placed, { bounds, extent }: SharedRoom): Found {
  const [one, two] = [a.part, b.part];
  const joint = jointsBetween(context).get(`${one.id}\n${two.id}`);
  const shortest = (lengths: Record<Axis, Length>): Axis =>
    AXES.reduce((x, y) => (size(lengths[y]) < size(lengths[x]) ? y : x));
  const least = shortest(extent);
  const moves = { x: wayOut('x', a, b, extent.x), y: wayOut('y', a, b, extent.y), z: wayOut('z', a, b, extent.z) };
  const way = shortest(moves);
  const { lo, hi } = bounds;
  const middle: Vector = [(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2, (lo[2] + hi[2]) / 2];
  return {
    message: say`${one.id} and ${two.id} take up the same room: they overlap by ${extent.x} in width, ${extent.y} in depth and ${extent.z} in height`,
    cure: say`Move one of them ${moves[way]} ${MOVES[way]}, shorten it, or let it in: with a notch, a groove or a housing.`,
    source: joint?.source ?? two.source,
    related: [one, two].map((part) => ({ message: say`${part.id} is declared here`, source: part.source })),
    about: { parts: [one.id, two.id], joint: joint?.id, statement: joint?.statement },
    marks: [one, two].map((part) => ({
      part: part.id,
      ...across(bounds, least, middle),
      words: say`${extent[least]} into ${part === one ? two.id : one.id}`,
    })),
  };
}

/** From side to side of the shared room along its shortest axis, through its middle. */
function across({ lo, hi }: Bounds, axis: (typeof AXES)[number], middle: Vector): { from: Vector; to: Vector } {
  const at = (end: Vector): Vector => [
    axis === 'x' ? end[0] : middle[0],
    axis === 'y' ? end[1] : middle[1],
    axis === 'z' ? end[2] : middle[2],
  ];
  return { from: at(lo), to: at(hi) };
}
