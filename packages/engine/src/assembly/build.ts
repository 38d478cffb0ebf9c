import { isGlued } from '../consumables/glued.js';
import type { Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { boundsWithoutAll } from '../geometry/boxes.js';
import { isRecess } from '../geometry/cut-solid.js';
import type { Bounds } from '../geometry/solid.js';
import { directionOut } from '../geometry/turn.js';
import { normal, subtract, type Vector } from '../geometry/vector.js';
import { bodyOf, boundsOfBox, INDEX, slopeOf } from '../solids/body.js';
import { axisOf, outward } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { Assembly, Bond, Item, Link, Piece, Slope } from './assembly.js';

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
  const items = placed.map((part): Item => ({ id: part.id, pieces: piecesOf(part) }));
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
      glued: isGlued(joint),
      letIn: LET_IN.includes(joint.verb),
    });
    const way = wayOut(joint, placed[entering]);
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

/** The way an entering part leaves its host: square off the host's side, or square off the mitre face it ends in. */
export function wayOut(
  { id, turn, verb, hostSide, enteringSide }: FittedJoint,
  entering: FittedPart | undefined,
): Vector {
  if (verb !== 'mitre') return clean(directionOut(turn, normal(hostSide)));
  const bevel = entering?.cuts.find((cut) => cut.kind === 'bevel' && cut.joint === id);
  if (bevel?.kind !== 'bevel') return subtract(normal(hostSide), normal(enteringSide));
  const slope = slopeOf(bevel);
  const [end, outer] = [normal(bevel.side), normal(bevel.outer)];
  const face: Vector = [end[0] - slope * outer[0], end[1] - slope * outer[1], end[2] - slope * outer[2]];
  return clean(directionOut(entering?.turn, [-face[0], -face[1], -face[2]]));
}

/** What is left of a turn's rounding is nothing. */
const clean = (way: Vector): Vector => {
  const on = (i: 0 | 1 | 2): number => (Math.abs(way[i]) < 1e-9 ? 0 : way[i]);
  return [on(0), on(1), on(2)];
};

/** A turned part is taken without its recesses: these lie in a frame of their own, and are shallow. */
function piecesOf(part: FittedPart): readonly Piece[] {
  const body = bodyOf(part);
  if (!body) return [];
  const recesses = part.turn ? [] : part.cuts.filter(isRecess).map((cut) => boundsOfBox(cut.box));
  if (recesses.length === 0 && body.slants.length === 0) return [{ ...body.bounds, slants: body.slants }];
  const boxes = boundsWithoutAll(body.bounds, recesses);
  const inner = innerOf(part, body.bounds);
  return boxes.map((bounds): Piece => ({ ...bounds, slants: body.slants, core: inner && common(bounds, inner) }));
}

/** A box wholly within a body: up to the heels of its bevels. None is sought in turned parts and those with a cant. */
function innerOf(part: FittedPart, { lo, hi }: Bounds): Bounds | undefined {
  if (part.turn || part.cant) return undefined;
  const [low, high]: [number[], number[]] = [[...lo], [...hi]];
  for (const cut of part.cuts) {
    if (cut.kind !== 'bevel') continue;
    const [thick, i] = [INDEX[axisOf(cut.outer)], INDEX[axisOf(cut.side)]];
    const depth = slopeOf(cut) * (hi[thick] - lo[thick]);
    if (outward(cut.side) === 1) high[i] = (high[i] as number) - depth;
    else low[i] = (low[i] as number) + depth;
  }
  return { lo: low as unknown as Vector, hi: high as unknown as Vector };
}

function common(a: Bounds, b: Bounds): Bounds | undefined {
  const lo: Vector = [Math.max(a.lo[0], b.lo[0]), Math.max(a.lo[1], b.lo[1]), Math.max(a.lo[2], b.lo[2])];
  const hi: Vector = [Math.min(a.hi[0], b.hi[0]), Math.min(a.hi[1], b.hi[1]), Math.min(a.hi[2], b.hi[2])];
  return lo[0] < hi[0] && lo[1] < hi[1] && lo[2] < hi[2] ? { lo, hi } : undefined;
}
