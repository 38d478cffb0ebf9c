import {
  type Connector,
  type Cut,
  type Fit,
  type FittedCant,
  type FittedJoint,
  type FittedPart,
  isFace,
  type Machine,
  type Side,
  type Spec,
} from '@dryfit/engine';
import type { Manifold } from 'manifold-3d';
import {
  bevelMesh,
  beyondHeel,
  cantMesh,
  connectorMesh,
  type Made,
  madeOf,
  openingMesh,
  outerSide,
  partMesh,
  partMeshWith,
  recessMesh,
  roomTo,
  type Stand,
  standOf,
} from './meshes.js';
import type { Workshop } from './workshop.js';

export type Kind =
  | 'slots-collide'
  | 'pair-too-short'
  | 'slot-near-edge'
  | 'thin-wall'
  | 'slot-breaks-through'
  | 'mitre-no-room'
  | 'parts-overlap'
  | 'connector-binds';

/** One thing measured on meshes. */
export interface Measured {
  readonly kind: Kind;
  /** What it is about, as findings of its kind can be told apart. */
  readonly key: string;
  /** By how much it is beyond its limit, mm; negative where it fails. Absent where only the verdict is known. */
  readonly margin?: number | undefined;
  readonly fails: boolean;
  /** The material itself, or the extents of a shared room. */
  readonly figures: readonly number[];
  /** The extents once every film of a hundredth is counted in, which may join two rooms that are told as one. */
  readonly otherwise?: (() => readonly number[]) | undefined;
  /** Whether a verdict the other way would be wrong by more than what is let pass. */
  readonly certain: (let_pass: number) => boolean;
}

/** How near two things are looked at, beyond what the shop asks to be left between them, mm. */
const BEYOND = 0.75;
const SIDES: readonly Side[] = ['left', 'right', 'front', 'rear', 'bottom', 'top'];
const OPPOSITE: Record<Side, Side> = {
  left: 'right',
  right: 'left',
  front: 'rear',
  rear: 'front',
  bottom: 'top',
  top: 'bottom',
};
const AXIS = { left: 'x', right: 'x', front: 'y', rear: 'y', bottom: 'z', top: 'z' } as const;

/** A cut with its mesh and what it belongs to. */
interface Piece {
  readonly part: FittedPart;
  readonly cut: Cut | (FittedCant & { readonly kind: 'cant' });
  readonly joint?: FittedJoint | undefined;
  readonly statement?: string | undefined;
  readonly mesh: Manifold;
  readonly stand?: Stand | undefined;
}

/** A connector in its two openings. */
export interface Seat {
  readonly joint: FittedJoint;
  readonly connector: Connector;
  readonly machine: Machine;
  readonly openings: readonly [Piece, Piece];
}

export interface Measurement {
  readonly measured: readonly Measured[];
  readonly seats: readonly Seat[];
  readonly parts: readonly FittedPart[];
}

export function measure(shop: Workshop, spec: Spec, fit: Fit): Measurement {
  const joints = new Map(fit.joints.map((joint) => [joint.id, joint]));
  const parts = fit.parts.filter(({ box }) => box);
  const pieces = parts.map((part): readonly Piece[] => [
    ...part.cuts.flatMap((cut) => pieceOf(shop, part, cut, joints) ?? []),
    ...(part.cant
      ? [{ part, cut: { kind: 'cant', ...part.cant } as const, mesh: cantMesh(shop, part, part.cant) }]
      : []),
  ]);
  const seats = fit.joints.flatMap((joint) => seatsOf(joint, pieces.flat()));
  const { limits } = spec.shop;
  const [skin, wall, edge] = [limits.skin.toNumber(), limits.wall.toNumber(), limits.slotToEdge.toNumber()];
  return {
    measured: [
      ...pieces.flatMap((own) => [
        ...betweenCuts(own, skin),
        ...own.flatMap((piece) => [...toSurfaces(shop, spec, piece, { skin, wall, edge })]),
      ]),
      ...rows(pieces.flat(), skin),
      ...betweenParts(shop, fit, parts),
      ...seated(shop, seats),
    ],
    seats,
    parts,
  };
}

function pieceOf(
  shop: Workshop,
  part: FittedPart,
  cut: Cut,
  joints: ReadonlyMap<string, FittedJoint>,
): Piece | undefined {
  if (cut.kind === 'bevel') {
    const joint = joints.get(cut.joint);
    return { part, cut, joint, statement: joint?.statement, mesh: bevelMesh(shop, part, cut) };
  }
  if ('box' in cut) return { part, cut, statement: cut.joint, mesh: recessMesh(shop, cut) };
  const joint = joints.get(cut.joint);
  if (!joint) return undefined;
  const stand = standOf(cut, joint);
  return { part, cut, joint, statement: joint.statement, stand, mesh: openingMesh(shop, cut, stand) };
}

const known = (kind: Kind, key: string, margin: number, figures: readonly number[] = []): Measured => ({
  kind,
  key,
  margin,
  fails: margin < 0,
  figures,
  certain: (least) => Math.abs(margin) >= least,
});

/** What is left between cuts of one part that are not of one row, of one joint, or recesses that run into each other. */
function* betweenCuts(own: readonly Piece[], skin: number): Generator<Measured> {
  const gaps: number[] = [];
  for (const [i, one] of own.entries())
    for (const two of own.slice(i + 1)) {
      const gap = countedGap(one, two, skin);
      if (gap !== undefined && gap < skin + BEYOND) gaps.push(gap);
    }
  const [first] = own;
  if (!first || gaps.length === 0) return;
  const least = Math.min(...gaps);
  yield known('slots-collide', first.part.id, least - skin, [least]);
}

function countedGap(one: Piece, two: Piece, skin: number): number | undefined {
  const [a, b] = [one.cut, two.cut];
  const opening = (piece: Piece): boolean => 'slot' in piece.cut;
  if (one.joint && one.joint === two.joint) return undefined;
  if (one.statement === two.statement && opening(one) !== opening(two)) return undefined;
  if (one.statement === two.statement && one.statement !== undefined && !opening(one) && a.kind === b.kind)
    return undefined;
  if (a.kind === 'bevel' && b.kind === 'bevel') return undefined;
  const gap = gapOf(one.mesh, two.mesh, skin + BEYOND);
  if (opening(one) || opening(two)) return gap;
  // Recesses: whether they meet matters from opposite faces, or where one lies along the edge of a mitre.
  const bothFaces =
    'box' in a && 'box' in b && a.kind !== 'notch' && b.kind !== 'notch' && a.surface === OPPOSITE[b.surface];
  const [bevel, recess] = a.kind === 'bevel' ? [a, b] : [b, a];
  const alongMitre =
    bevel.kind === 'bevel' &&
    'box' in recess &&
    recess.kind !== 'notch' &&
    AXIS[bevel.side] !== recess.run &&
    AXIS[bevel.outer] !== recess.run;
  return gap < 1e-6 && !bothFaces && !alongMitre ? undefined : gap;
}

/** How far two meshes are apart, infinite where it is more than looked for. */
export function gapOf(a: Manifold, b: Manifold, search: number): number {
  const [one, two] = [a.boundingBox(), b.boundingBox()];
  for (const i of [0, 1, 2] as const)
    if (one.min[i] - two.max[i] > search || two.min[i] - one.max[i] > search) return Number.POSITIVE_INFINITY;
  const gap = a.minGap(b, search);
  return gap < search ? gap : Number.POSITIVE_INFINITY;
}

interface Limits {
  readonly skin: number;
  readonly wall: number;
  readonly edge: number;
}

/** From a cut to the sides of its part. */
function* toSurfaces(shop: Workshop, spec: Spec, piece: Piece, limits: Limits): Generator<Measured> {
  const { part, cut, mesh, joint, statement = '' } = piece;
  const own = `${part.id}|${statement}`;
  if (cut.kind === 'bevel' || cut.kind === 'notch' || cut.kind === 'cant') return;
  const under = roomTo(part, OPPOSITE[cut.surface], mesh);
  if ('box' in cut) {
    yield known('slot-breaks-through', own, under - limits.skin, [under]);
    if (cut.kind !== 'rebate') yield* besideRecess(spec, piece, limits.wall);
    return;
  }
  const across = SIDES.filter((side) => AXIS[side] !== cut.run && AXIS[side] !== AXIS[cut.surface]);
  const ends = SIDES.filter((side) => AXIS[side] === cut.run);
  const room = Math.min(...ends.map((side) => roomTo(part, side, mesh)));
  yield known('slot-near-edge', cut.slot, room - limits.edge, [room]);
  if (joint?.meeting !== 'mitre') {
    yield known('slot-breaks-through', own, under - limits.skin, [under]);
    const wall = Math.min(...across.map((side) => roomTo(part, side, mesh)));
    yield known('thin-wall', own, wall - limits.wall, [wall]);
    return;
  }
  const bevel = part.cuts.find((other) => other.kind === 'bevel' && other.joint === joint.id);
  if (bevel?.kind !== 'bevel') return;
  const skin = roomTo(part, outerSide(joint, cut), mesh);
  const heel = gapOf(mesh, beyondHeel(shop, part, bevel), limits.wall + BEYOND);
  yield known('mitre-no-room', statement, Math.min(skin - limits.skin, heel - limits.wall), [skin, heel]);
}

/** A recess that reaches an edge of the face it lies in is open there; the ends of one that runs through are no walls. */
function* besideRecess(spec: Spec, { part, cut, mesh, statement = '' }: Piece, least: number): Generator<Measured> {
  if (!('box' in cut)) return;
  const written = spec.statements.find(({ id }) => id === statement);
  const stopped = written?.kind === 'joint' && written.stopped !== undefined;
  const sides = SIDES.filter((side) => AXIS[side] !== AXIS[cut.surface] && (stopped || AXIS[side] !== cut.run));
  const rooms = sides
    .map((side) => ({ side, room: roomTo(part, side, mesh) }))
    .filter(({ side, room }) => isFace(side, part.attitude) || room > 1e-9);
  if (rooms.length === 0) return;
  const least_ = Math.min(...rooms.map(({ room }) => room));
  yield known('thin-wall', `${part.id}|${statement}`, least_ - least, [least_]);
}

/** Between neighbours of one row. */
function* rows(pieces: readonly Piece[], skin: number): Generator<Measured> {
  for (const [i, piece] of pieces.entries()) {
    const next = pieces[i + 1];
    if (
      !next ||
      !('slot' in piece.cut) ||
      !('slot' in next.cut) ||
      next.part !== piece.part ||
      next.joint !== piece.joint
    )
      continue;
    const gap = gapOf(piece.mesh, next.mesh, skin + BEYOND);
    if (!Number.isFinite(gap)) continue;
    yield known('pair-too-short', `${piece.statement}|${piece.joint?.entering}`, gap - skin, [gap]);
  }
}

/** Room that two parts both take up; or, of parts that are not joined, how far they are from it. */
export function* betweenParts(shop: Workshop, { joints }: Fit, parts: readonly FittedPart[]): Generator<Measured> {
  for (const [i, one] of parts.entries())
    for (const two of parts.slice(i + 1)) {
      const key = [one.id, two.id].sort().join('|');
      const [a, b] = [partMesh(shop, one), partMesh(shop, two)];
      const gap = gapOf(a, b, BEYOND);
      if (!Number.isFinite(gap)) continue;
      const joined = joints.some(({ entering, host }) => [entering, host].sort().join('|') === key);
      if (gap > 0) {
        // How far parts that are joined are apart is by design, and near no limit.
        yield known('parts-overlap', key, gap < TOUCHING ? 0 : joined ? Number.POSITIVE_INFINITY : gap);
        continue;
      }
      const rooms = roomsOf(shop, a, b);
      const [largest] = rooms;
      const deepest = Math.max(0, ...rooms.map((size) => Math.min(...size)));
      const otherwise = (): readonly number[] =>
        roomsOf(shop, partMeshWith(shop, one, -0.01), partMeshWith(shop, two, -0.01))[0] ?? [];
      yield { ...known('parts-overlap', key, -deepest, largest), otherwise };
    }
}

/** Parts are made a little smaller all round; nearer than this they touch, mm. */
const TOUCHING = 0.005;

/** The sizes of the rooms that two meshes share, the largest first. */
const roomsOf = (shop: Workshop, a: Manifold, b: Manifold): readonly (readonly number[])[] =>
  shop
    .pieces(shop.both(a, b))
    .map((piece) => sizeOf(piece))
    .filter((size) => Math.min(...size) > TOUCHING)
    .sort((p, q) => product(q) - product(p));

const sizeOf = (piece: Manifold): readonly number[] => {
  const { min, max } = piece.boundingBox();
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
};
const product = (of: readonly number[]): number => of.reduce((a, b) => a * b, 1);

function seatsOf(joint: FittedJoint, pieces: readonly Piece[]): readonly Seat[] {
  const { connector, machine } = joint;
  if (!connector || !machine) return [];
  const own = pieces.filter((piece) => piece.joint === joint && 'slot' in piece.cut);
  const first = own.filter(({ part }) => part.id === joint.entering);
  const second = own.filter(({ part }) => part.id === joint.host);
  return first.flatMap((piece, i): readonly Seat[] => {
    const other = second[i];
    return other ? [{ joint, connector, machine, openings: [piece, other] }] : [];
  });
}

/** Whether each connector goes into the two openings of its first seat, which are like those of its others. */
function* seated(shop: Workshop, seats: readonly Seat[]): Generator<Measured> {
  const told = new Set<string>();
  for (const seat of seats) {
    const key = seat.connector.name;
    if (told.has(key)) continue;
    told.add(key);
    const made = madeOf(seat.connector);
    const fails = !goesIn(shop, seat, made);
    yield {
      kind: 'connector-binds',
      key,
      fails,
      figures: [],
      // Made so much smaller or larger all over, it still does what it does.
      certain: (least) => goesIn(shop, seat, grown(made, fails ? -2 * least : 2 * least)) !== fails,
    };
  }
}

const grown = (made: Made, by: number): Made => ({
  ...made,
  along: made.along + by,
  across: made.across + by,
  thickness: made.thickness + (made.shape === 'dowel' ? by : 0),
});

/** Whether a connector, with its room for glue, lies within its two openings, set in as far as their depths let it. */
export function goesIn(shop: Workshop, seat: Seat, made: Made, lengthen = 0): boolean {
  const [first, second] = seat.openings;
  const a = first.cut;
  const b = second.cut;
  if (!('slot' in a) || !('slot' in b) || !first.stand || !second.stand) return true;
  // Whatever is longer than a slot is at the surface is refused, even if it could sit deeper in the other half.
  if (lengthen === 0 && [first, second].some((half) => lengthOf(half) < made.along)) return false;
  const toward = (a.depth.toNumber() - b.depth.toNumber()) / 2;
  const mesh = connectorMesh(shop, made, seat.machine, first.stand, toward);
  const openings =
    lengthen === 0
      ? [first.mesh, second.mesh]
      : [
          openingMesh(shop, a, first.stand, a.length.value + lengthen),
          openingMesh(shop, b, second.stand, b.length.value + lengthen),
        ];
  return shop.less(mesh, ...openings).volume() < 1e-6;
}

/** Extent of an opening along its run, and what chords at both ends may lack of it. */
function lengthOf({ cut, mesh }: Piece): number {
  const { min, max } = mesh.boundingBox();
  const i = { x: 0, y: 1, z: 2 }[(cut as { readonly run: 'x' | 'y' | 'z' }).run] as 0 | 1 | 2;
  return max[i] - min[i] + 0.01;
}

/** A connector where it sits. */
export function seatedMesh(shop: Workshop, seat: Seat): Manifold | undefined {
  const [first, second] = seat.openings;
  if (!('slot' in first.cut) || !('slot' in second.cut) || !first.stand) return undefined;
  const toward = (first.cut.depth.toNumber() - second.cut.depth.toNumber()) / 2;
  return connectorMesh(shop, { ...madeOf(seat.connector), glue: 0 }, seat.machine, first.stand, toward);
}
