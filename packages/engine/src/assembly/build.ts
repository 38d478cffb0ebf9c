import type { Box, Cut, Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { withoutAll } from '../geometry/boxes.js';
import { isRecess } from '../geometry/cut-solid.js';
import type { Bounds } from '../geometry/solid.js';
import { normal, subtract, type Vector } from '../geometry/vector.js';
import { AXES, axisOf, outward } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { Assembly, Bond, HalfSpace, Item, Link, Piece, Slope } from './assembly.js';

/** What of a cabinet is put together, and what is left out of it. */
export interface Built {
  readonly assembly: Assembly;
  /** Parts that only rest in place: they go in last and come out again. */
  readonly loose: readonly PartId[];
  /** Parts whose place is not known, so that nothing can be said of them. */
  readonly unplaced: readonly PartId[];
}

/** Parts as bodies, joints as what holds them. Parts that rest, and parts without a place, are left out. */
export function assemblyOf(fit: Fit): Built {
  const resting = loosely(fit);
  const placed = fit.parts.filter((part) => part.box && !resting.has(part.id));
  const number = new Map(placed.map((part, i) => [part.id, i]));
  const items = placed.map((part): Item => ({ id: part.id, pieces: part.box ? piecesOf(part, part.box) : [] }));
  const bonds: Bond[] = [];
  const slopes: Slope[] = [];
  const links: Link[] = [];
  for (const joint of fit.joints) {
    const [entering, host] = [number.get(joint.entering), number.get(joint.host)];
    if (joint.verb === 'rest' || entering === undefined || host === undefined || entering === host) continue;
    const connected = joint.halves.some(({ slots }) => slots.length > 0);
    links.push({
      joint: joint.id,
      entering,
      host,
      pressed: joint.verb !== 'groove' || connected,
      letIn: LET_IN.includes(joint.verb),
    });
    const way = wayOut(joint);
    if (joint.verb === 'mitre') slopes.push({ entering, host, normal: way });
    if (connected && joint.connector)
      bonds.push({ joint: joint.id, entering, host, way, length: joint.connector.across.toNumber() });
  }
  return {
    assembly: { items, bonds, slopes, links },
    loose: fit.parts.filter(({ id }) => resting.has(id)).map(({ id }) => id),
    unplaced: fit.parts.filter(({ id, box }) => !box && !resting.has(id)).map(({ id }) => id),
  };
}

const LET_IN: readonly string[] = ['groove', 'house', 'rebate'];

/** Parts that rest somewhere and are joined nowhere. */
function loosely({ joints }: Fit): ReadonlySet<PartId> {
  const loose = new Set(joints.filter(({ verb }) => verb === 'rest').map(({ entering }) => entering));
  for (const { verb, entering, host } of joints) {
    if (verb === 'rest') continue;
    loose.delete(entering);
    loose.delete(host);
  }
  return loose;
}

/** The way an entering part leaves its host: square off the host's side, or square off the mitre face. */
function wayOut({ verb, hostSide, enteringSide }: FittedJoint): Vector {
  return verb === 'mitre' ? subtract(normal(hostSide), normal(enteringSide)) : normal(hostSide);
}

function piecesOf(part: FittedPart, box: Box): readonly Piece[] {
  const bevels = part.cuts.filter((cut) => cut.kind === 'bevel');
  const recesses = part.cuts.filter(isRecess).map((cut) => cut.box);
  const boxes = recesses.length === 0 ? [box] : withoutAll(box, recesses);
  const slants = bevels.map((bevel) => slantOf(bevel, box));
  const within = bevels.length === 0 ? undefined : heelBox(bevels, box);
  return boxes.filter(hasRoom).map((one): Piece => {
    const bounds = boundsOf(one);
    return { ...bounds, slants, core: within && common(bounds, within) };
  });
}

const hasRoom = (box: Box): boolean => AXES.every((axis) => box.lo[axis].lt(box.hi[axis]));

const boundsOf = ({ lo, hi }: Box): Bounds => ({
  lo: [lo.x.toNumber(), lo.y.toNumber(), lo.z.toNumber()],
  hi: [hi.x.toNumber(), hi.y.toNumber(), hi.z.toNumber()],
});

type Bevel = Extract<Cut, { kind: 'bevel' }>;

const INDEX = { x: 0, y: 1, z: 2 } as const;
const at = (box: Box, side: Bevel['side']): number => (outward(side) === 1 ? box.hi : box.lo)[axisOf(side)].toNumber();

/** At 45° a bevelled end comes in from its toe by a millimetre for each millimetre of depth from the outer face. */
function slantOf({ side, outer }: Bevel, box: Box): HalfSpace {
  return {
    normal: subtract(normal(side), normal(outer)),
    offset: outward(side) * at(box, side) - outward(outer) * at(box, outer),
  };
}

/** The box up to the heels: what of a bevelled part has its whole thickness. */
function heelBox(bevels: readonly Bevel[], box: Box): Bounds {
  const lo: [number, number, number] = [box.lo.x.toNumber(), box.lo.y.toNumber(), box.lo.z.toNumber()];
  const hi: [number, number, number] = [box.hi.x.toNumber(), box.hi.y.toNumber(), box.hi.z.toNumber()];
  for (const { side, outer } of bevels) {
    const thick = axisOf(outer);
    const depth = box.hi[thick].sub(box.lo[thick]).toNumber();
    const i = INDEX[axisOf(side)];
    if (outward(side) === 1) hi[i] -= depth;
    else lo[i] += depth;
  }
  return { lo, hi };
}

function common(a: Bounds, b: Bounds): Bounds | undefined {
  const lo: Vector = [Math.max(a.lo[0], b.lo[0]), Math.max(a.lo[1], b.lo[1]), Math.max(a.lo[2], b.lo[2])];
  const hi: Vector = [Math.min(a.hi[0], b.hi[0]), Math.min(a.hi[1], b.hi[1]), Math.min(a.hi[2], b.hi[2])];
  return lo[0] < hi[0] && lo[1] < hi[1] && lo[2] < hi[2] ? { lo, hi } : undefined;
}
