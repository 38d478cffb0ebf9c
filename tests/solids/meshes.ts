import type {
  Axis,
  Box,
  Connector,
  Cut,
  FittedCant,
  FittedJoint,
  FittedPart,
  Machine,
  Side,
  Turn,
} from '@dryfit/engine';
import type { Manifold } from 'manifold-3d';
import { cross, OUT, plus, times, type Vector } from '../support/vectors.js';
import { type Frame, onGrid, type Workshop } from './workshop.js';

/**
 * Meshes of what a fit says, made from its figures alone: nothing here is shared with the engine's own bodies.
 * Directions are worked out from the names of sides.
 */

type Opening = Extract<Cut, { slot: string }>;
type Recess = Extract<Cut, { box: unknown }>;
type Bevel = Extract<Cut, { kind: 'bevel' }>;

/** By how much parts and connectors are made smaller, mm: what touches in one plane is told from what overlaps. */
const SLACK = 2 ** -10;

const ALONG: Record<Axis, Vector> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

export const corners = (box: Box): readonly [Vector, Vector] => [
  [onGrid(box.lo.x.toNumber()), onGrid(box.lo.y.toNumber()), onGrid(box.lo.z.toNumber())],
  [onGrid(box.hi.x.toNumber()), onGrid(box.hi.y.toNumber()), onGrid(box.hi.z.toNumber())],
];

/** Where an opening stands: along its run, across it, into the wood, and the middle of its mouth. */
export interface Stand {
  readonly run: Vector;
  readonly across: Vector;
  readonly into: Vector;
  readonly mouth: Vector;
}

export function standOf(cut: Opening, joint: FittedJoint): Stand {
  const run = ALONG[cut.run];
  const { x, y, z } = cut.centre;
  const at: Vector = [onGrid(x.toNumber()), onGrid(y.toNumber()), onGrid(z.toNumber())];
  const end = OUT[cut.surface];
  if (joint.meeting !== 'mitre') {
    const into = times(end, -1);
    return { run, into, across: cross(into, run), mouth: at };
  }
  // The wood of a mitred part lies inward from its end and outward from the slope: from toe to heel both come in.
  const outer = OUT[outerSide(joint, cut)];
  const half = Math.SQRT1_2;
  const slope = times(plus(end, outer), -half);
  const fromToe = cut.fromToe?.toNumber() ?? 0;
  return { run, across: slope, into: times(plus(outer, times(end, -1)), half), mouth: plus(at, times(slope, fromToe)) };
}

/** The outer face of the part that a mitre slot lies in: the side the other part's end shows at. */
export const outerSide = (joint: FittedJoint, cut: Opening): Side =>
  cut.surface === joint.enteringSide ? joint.hostSide : joint.enteringSide;

/** A slot, mortise or hole as its cutter leaves it. */
export function openingMesh(shop: Workshop, cut: Opening, stand: Stand, length = cut.length.value): Manifold {
  const depth = cut.depth.toNumber();
  const width = cut.width.toNumber();
  const { run, across, into, mouth } = stand;
  if (cut.kind === 'disc') {
    const frame: Frame = {
      first: run,
      second: into,
      third: across,
      origin: plus(mouth, times(across, -width / 2)),
    };
    return shop.prism(segment(shop, cut.diameter.toNumber() / 2, depth), width, frame);
  }
  const frame: Frame = { first: run, second: across, third: into, origin: mouth };
  return shop.prism(stadium(shop, cut.kind === 'hole' ? width : length, width), depth, frame);
}

/** The part of a disc that is under the surface when its lowest point is `plunge` deep: (along, down). */
function segment(shop: Workshop, radius: number, plunge: number): [number, number][] {
  const centre = plunge - radius;
  if (centre >= 0) return [[-radius, 0], [radius, 0], ...shop.arc([0, centre], radius, 0, Math.PI)];
  const from = Math.asin(-centre / radius);
  return shop.arc([0, centre], radius, from, Math.PI - from);
}

/** A slot with round ends, seen from above. */
function stadium(shop: Workshop, length: number, width: number): [number, number][] {
  const radius = width / 2;
  const reach = Math.max(0, length / 2 - radius);
  return [
    ...shop.arc([reach, 0], radius, -Math.PI / 2, Math.PI / 2),
    ...shop.arc([-reach, 0], radius, Math.PI / 2, (3 * Math.PI) / 2),
  ];
}

export function recessMesh(shop: Workshop, { box }: Recess): Manifold {
  const [lo, hi] = corners(box);
  return shop.box(lo, hi);
}

const PLANE = (part: FittedPart, side: Side): number => {
  const [lo, hi] = corners(part.box as Box);
  const out = OUT[side];
  const i = out.findIndex((c) => c !== 0) as 0 | 1 | 2;
  return (out[i] as number) > 0 ? hi[i] : lo[i];
};

/** Signed room from a mesh to a side's plane: negative where it stands out of the part. */
export function roomTo(part: FittedPart, side: Side, mesh: Manifold): number {
  const { min, max } = mesh.boundingBox();
  const i = OUT[side].findIndex((c) => c !== 0) as 0 | 1 | 2;
  return (OUT[side][i] as number) > 0 ? PLANE(part, side) - max[i] : min[i] - PLANE(part, side);
}

/** What a mitre takes off a part's end: from nothing at the toe to its full width at the heel; `more` mm more of it. */
export function bevelMesh(shop: Workshop, part: FittedPart, cut: Bevel, more = 0): Manifold {
  const [lo, hi] = corners(part.box as Box);
  const [end, outer] = [OUT[cut.side], OUT[cut.outer]];
  const line = cross(end, outer).map(Math.abs) as unknown as Vector;
  const on = (side: Side): Vector => times(OUT[side].map(Math.abs) as unknown as Vector, PLANE(part, side));
  const i = line.findIndex((c) => c !== 0) as 0 | 1 | 2;
  const k = OUT[cut.outer].findIndex((c) => c !== 0) as 0 | 1 | 2;
  const thickness = hi[k] - lo[k];
  const leg = cut.angle === 45 ? thickness : thickness * Math.tan((cut.angle * Math.PI) / 180);
  const origin = plus(plus(on(cut.side), on(cut.outer)), line, lo[i]);
  const frame: Frame = { first: times(end, -1), second: times(outer, -1), third: line, origin };
  const wedge = [
    [0, 0],
    [leg, thickness],
    [0, thickness],
  ] as const;
  // Cut off with more than is there, so that no film is left at the end or the faces.
  const slope = leg / thickness;
  const beyond = [
    [-slope - 1, -1],
    [more - slope, -1],
    [leg + more + slope, thickness + 1],
    [-slope - 1, thickness + 1],
  ] as const;
  return shop.prism(more > 0 ? beyond : wedge, hi[i] - lo[i], frame);
}

/** A corner cut off a part through its whole thickness, its two legs made longer by `more` mm each. */
export function cantMesh(shop: Workshop, part: FittedPart, { corner, legs }: FittedCant, more = 0): Manifold {
  const [lo, hi] = corners(part.box as Box);
  const [a, b] = [OUT[corner[0]], OUT[corner[1]]];
  const line = cross(a, b).map(Math.abs) as unknown as Vector;
  const on = (side: Side): Vector => times(OUT[side].map(Math.abs) as unknown as Vector, PLANE(part, side));
  const i = line.findIndex((c) => c !== 0) as 0 | 1 | 2;
  const origin = plus(plus(on(corner[0]), on(corner[1])), line, lo[i]);
  const [first, second] = [legs[0].toNumber() + more, legs[1].toNumber() + more];
  const outline = [
    [0, 0],
    [first, 0],
    [0, second],
  ] as const;
  return shop.prism(outline, hi[i] - lo[i], { first: times(a, -1), second: times(b, -1), third: line, origin });
}

/** Everything beyond the inner face of a mitred part from its heel on, 100 thick. */
export function beyondHeel(shop: Workshop, part: FittedPart, cut: Bevel): Manifold {
  const [lo, hi] = corners(part.box as Box);
  const a = [...lo] as [number, number, number];
  const b = [...hi] as [number, number, number];
  const k = OUT[cut.outer].findIndex((c) => c !== 0) as 0 | 1 | 2;
  const e = OUT[cut.side].findIndex((c) => c !== 0) as 0 | 1 | 2;
  const thickness = hi[k] - lo[k];
  if ((OUT[cut.outer][k] as number) > 0) [a[k], b[k]] = [lo[k] - 100, lo[k]];
  else [a[k], b[k]] = [hi[k], hi[k] + 100];
  if ((OUT[cut.side][e] as number) > 0) b[e] = hi[e] - thickness;
  else a[e] = lo[e] + thickness;
  return shop.box(a, b);
}

/** A part sawn to size and bevelled, with its grooves, rebates, housings and notches; its slots are left out. */
export const partMesh = (shop: Workshop, part: FittedPart): Manifold =>
  shop.once(part, () => partMeshWith(shop, part, SLACK));

/** The same, smaller all round by `slack` mm. */
export function partMeshWith(shop: Workshop, part: FittedPart, slack: number): Manifold {
  const [lo, hi] = corners(part.box as Box);
  const taken = part.cuts.flatMap((cut) => {
    if (cut.kind === 'bevel') return [bevelMesh(shop, part, cut, Math.max(2 * slack, 1e-6))];
    if (!('box' in cut)) return [];
    const [from, to] = corners(cut.box);
    return [shop.box(grown(from, -slack), grown(to, slack))];
  });
  const corner = part.cant ? [cantMesh(shop, part, part.cant, 2 * slack)] : [];
  const mesh = shop.less(shop.box(grown(lo, slack), grown(hi, -slack)), ...taken, ...corner);
  return part.turn ? turnedOut(shop, mesh, part.turn) : mesh;
}

/** From a frame turned about the upright into the cabinet. */
function turnedOut(shop: Workshop, mesh: Manifold, { origin, along }: Turn): Manifold {
  const [x, y] = [along.x.toNumber(), along.y.toNumber()];
  const [c, s] = [x / Math.hypot(x, y), y / Math.hypot(x, y)];
  const [dx, dy] = [origin.x.toNumber(), origin.y.toNumber()];
  return shop.keep(mesh.transform([c, s, 0, 0, -s, c, 0, 0, 0, 0, 1, 0, dx, dy, 0, 1]));
}

const grown = (corner: Vector, by: number): Vector => plus(corner, [by, by, by]);

/** How a connector is made, mm. */
export interface Made {
  readonly shape: Connector['shape'];
  readonly along: number;
  readonly across: number;
  readonly thickness: number;
  /** Room for glue, taken as a slice in the middle of the connector. */
  readonly glue: number;
}

export const madeOf = (connector: Connector): Made => ({
  shape: connector.shape,
  along: connector.along.toNumber(),
  across: connector.across.toNumber(),
  thickness: connector.thickness.toNumber(),
  glue: connector.clearance?.toNumber() ?? 0,
});

/**
 * A connector as it sits between two openings whose mouths meet, `toward` of it farther into the first. A biscuit is
 * two arcs, no rounder than the cutter of `machine`, cut off square at its length.
 */
export function connectorMesh(shop: Workshop, made: Made, machine: Machine, stand: Stand, toward: number): Manifold {
  const { run, across, into, mouth } = stand;
  // What is as wide as its opening must not be found outside of it by rounding.
  const [thickness, along, glue] = [made.thickness - SLACK, made.along - SLACK, made.glue];
  const reach = (made.across - SLACK) / 2;
  if (made.shape === 'biscuit') {
    const half = along / 2;
    const through = (half * half + reach * reach) / (2 * reach);
    const radius = Math.max(machine.kind === 'disc' ? machine.diameter.toNumber() / 2 : 0, through);
    const middle = radius - reach;
    const angle = Math.asin(Math.min(1, half / radius));
    const upper = shop.arc([0, -middle], radius, Math.PI / 2 - angle, Math.PI / 2 + angle);
    const ring = [
      ...upper.map(([x, y]): [number, number] => [x, y + glue / 2]),
      ...upper.map(([x, y]): [number, number] => [-x, -y - glue / 2]),
    ];
    const frame: Frame = {
      first: run,
      second: into,
      third: across,
      origin: plus(plus(mouth, into, toward), across, -thickness / 2),
    };
    return shop.prism(tidied(ring), thickness, frame);
  }
  const frame: Frame = {
    first: run,
    second: across,
    third: into,
    origin: plus(mouth, times(into, toward - reach - glue / 2)),
  };
  const flat = made.shape === 'dowel' ? stadium(shop, thickness, thickness) : stadium(shop, along, thickness);
  return shop.prism(flat, 2 * reach + glue, frame);
}

/** Without points that follow themselves, as at the tips of a pointed biscuit. */
const tidied = (ring: readonly [number, number][]): [number, number][] =>
  ring.filter(([x, y], i) => {
    const [a, b] = ring[(i + 1) % ring.length] as [number, number];
    return Math.hypot(a - x, b - y) > 1e-9;
  });
