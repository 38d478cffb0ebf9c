import {
  axisOf,
  type Cut,
  type FittedJoint,
  type FittedPart,
  type Half,
  highSide,
  type LengthFormat,
  outward,
  type Rational,
  type Side,
  type Slot,
  thirdAxis,
} from '@dryfit/engine';
import { degrees } from '../../print/degrees.js';
import { printLength } from '../../print/length.js';
import { surfaceName } from '../../print/surface.js';
import type { SceneBox, SceneCut, Triple } from '../scene.js';
import { cant } from './cant.js';
import { INDEX, insetsOf, planeOf, sceneBox, triple } from './figures.js';
import type { Places } from './places.js';

/** A half of a joint with the joint and one of its slots, found by the slot's id. */
export interface SlotOfJoint {
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly slot: Slot;
}

type Opening = Extract<Cut, { slot: string }>;
type Recess = Extract<Cut, { box: unknown }>;
type Bevel = Extract<Cut, { kind: 'bevel' }>;

/** Every cut of a part as it is drawn. */
export function sceneCuts(
  part: FittedPart,
  slots: ReadonlyMap<string, SlotOfJoint>,
  joints: ReadonlyMap<string, FittedJoint>,
  places: Places,
  format: LengthFormat,
): readonly SceneCut[] {
  const print = (length: Rational) => printLength(length, format, 'table');
  const drawn = part.cuts.flatMap((cut): SceneCut[] => {
    if (cut.kind === 'bevel') return bevel(part, cut, joints.get(cut.joint), places);
    if ('box' in cut) return recess(part, cut, places, print);
    return cut.turn ? [] : opening(part, cut, slots.get(cut.slot), places, print);
  });
  return numbered([...drawn, ...cant(part, places, print)]);
}

/** Cuts alike in name are told apart by their order. */
function numbered(cuts: readonly SceneCut[]): readonly SceneCut[] {
  const seen = new Map<string, number>();
  return cuts.map((cut) => {
    const n = (seen.get(cut.shape) ?? 0) + 1;
    seen.set(cut.shape, n);
    return n === 1 ? cut : { ...cut, shape: `${cut.shape} (${n})` };
  });
}

type Print = (length: Rational) => string;

function opening(
  part: FittedPart,
  cut: Opening,
  found: SlotOfJoint | undefined,
  places: Places,
  print: Print,
): SceneCut[] {
  if (!found || !part.box) return [];
  const { joint, half, slot } = found;
  const mate = joint.entering === part.id ? joint.host : joint.entering;
  const outer = half.mitre?.outer;
  const angle = half.mitre?.angle ?? 45;
  const fromToe = outer && toeDistance(part, half, angle);
  const word = cut.kind === 'disc' ? 'slot' : cut.kind;
  return [
    {
      shape: `slot ${cut.slot}`,
      label:
        `${joint.connector?.name ?? ''} ${word} ${slot.number} in the ${surfaceName(part, cut.surface)} of ${part.id}, for ${mate}: ` +
        `${print(slot.fromDatum)} from the ${surfaceName(part, half.datum)}`,
      places: places.slot(joint.statement, joint.source, [joint.entering, joint.host]),
      kind: cut.kind,
      surface: cut.surface,
      box: openingBox(cut, outer, fromToe, angle),
      run: cut.run,
      joint: joint.id,
      mouth: { length: cut.length.value, width: cut.width.toNumber(), depth: cut.depth.toNumber() },
      ...(fromToe !== undefined && { fromToe }),
      ...(outer !== undefined && { outer, angle }),
      measured: {
        number: slot.number,
        connector: joint.connector?.name ?? '',
        datum: half.datum,
        fromDatum: print(slot.fromDatum),
        from: half.from,
        across: print(slot.fromReference),
        depth: print(half.depth),
      },
    },
  ];
}

/** A slot's distance from the toe along a mitre face t/cos β wide. */
function toeDistance(part: FittedPart, half: Half, angle: number): number {
  const across = half.across.toNumber();
  if (half.from.kind === 'toe' || !part.box) return across;
  const axis = axisOf(half.from.side);
  return part.box.hi[axis].sub(part.box.lo[axis]).toNumber() / Math.cos(radians(angle)) - across;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The box around a slot; of one in a mitre the box of the four corners it has in that corner's plane. */
function openingBox(cut: Opening, outer: Side | undefined, fromToe: number | undefined, angle: number): SceneBox {
  const at = triple(cut.centre);
  const depth = cut.depth.toNumber();
  const across = cut.width.toNumber() / 2;
  const lo = [...at] as [number, number, number];
  const hi = [...at] as [number, number, number];
  const run = INDEX[cut.run];
  lo[run] -= cut.length.value / 2;
  hi[run] += cut.length.value / 2;
  const normal = INDEX[axisOf(cut.surface)];
  const out = outward(cut.surface);
  if (outer === undefined || fromToe === undefined) {
    const other = 3 - run - normal;
    lo[other as 0] -= across;
    hi[other as 0] += across;
    lo[normal] = Math.min(at[normal], at[normal] - out * depth);
    hi[normal] = Math.max(at[normal], at[normal] - out * depth);
    return { lo, hi };
  }
  // In the plane of the corner the face runs inward from the outer face and the end; square to it lies the way in.
  const [sine, cosine] = [Math.sin(radians(angle)), Math.cos(radians(angle))];
  const second = INDEX[axisOf(outer)];
  const up = outward(outer);
  const corners = [-across, across].flatMap((c) => [0, depth].map((d) => [fromToe + c, d] as const));
  const alongEnd = corners.map(([along, into]) => at[normal] - out * (along * sine + into * cosine));
  const alongOuter = corners.map(([along, into]) => at[second] - up * (along * cosine - into * sine));
  lo[normal] = Math.min(...alongEnd);
  hi[normal] = Math.max(...alongEnd);
  lo[second] = Math.min(...alongOuter);
  hi[second] = Math.max(...alongOuter);
  return { lo, hi };
}

function recess(part: FittedPart, cut: Recess, places: Places, print: Print): SceneCut[] {
  if (!part.box) return [];
  const across = thirdAxis(axisOf(cut.surface), cut.run) ?? cut.run;
  const base = { surface: cut.surface, box: sceneBox(cut.box), run: cut.run };
  const walls = insetsOf(part.box, cut.box, across);
  const depths = insetsOf(part.box, cut.box, axisOf(cut.surface));
  const depth = cut.surface === depths.low.from ? depths.low.far : depths.high.far;
  const nearer = walls.low.near.le(walls.high.near) ? walls.low : walls.high;
  if (cut.kind === 'notch') {
    return [
      {
        ...base,
        shape: `cut notch ${cut.surface} ${nearer.from} of ${part.id}`,
        label: `notch of ${part.id} at the ${cut.surface} ${nearer.from}: ${print(depth)} in from the ${cut.surface}, ${print(nearer.far)} from the ${nearer.from}`,
        places: places.statement(cut.source, [part.id]),
        kind: 'notch',
        legs: [
          { from: cut.surface, length: print(depth) },
          { from: nearer.from, length: print(nearer.far) },
        ],
      },
    ];
  }
  const ends = insetsOf(part.box, cut.box, cut.run);
  return [
    {
      ...base,
      shape: `cut ${cut.kind} ${cut.surface} of ${part.id} by ${cut.joint ?? ''}`,
      label: `${cut.kind} in the ${surfaceName(part, cut.surface)} of ${part.id}: ${print(nearer.far.sub(nearer.near))} wide, ${print(depth)} deep, ${print(nearer.near)} in from the ${surfaceName(part, nearer.from)}`,
      places: places.statement(cut.source, [part.id]),
      kind: cut.kind,
      ...(cut.joint !== undefined && { joint: cut.joint }),
      recess: {
        width: print(nearer.far.sub(nearer.near)),
        depth: print(depth),
        from: nearer.from,
        near: print(nearer.near),
        far: print(nearer.far),
        stops: [ends.low, ends.high]
          .filter(({ near }) => near.sign() > 0)
          .map(({ from, near }) => ({ from, at: print(near) })),
      },
    },
  ];
}

function bevel(part: FittedPart, cut: Bevel, joint: FittedJoint | undefined, places: Places): SceneCut[] {
  const { box } = part;
  if (!box) return [];
  const [end, face] = [axisOf(cut.side), axisOf(cut.outer)];
  const run = thirdAxis(end, face);
  if (run === undefined) return [];
  const thick = box.hi[face].sub(box.lo[face]);
  const plane = planeOf(box, cut.side);
  // As far in as the heel lies; at a square corner as far as the part is thick.
  const far = cut.angle === 45 ? thick.toNumber() : thick.toNumber() * Math.tan(radians(cut.angle));
  const inner = plane.toNumber() - outward(cut.side) * far;
  const whole = sceneBox(box);
  const at = (edge: Triple<number>, value: number): Triple<number> => {
    const moved: [number, number, number] = [...edge];
    moved[INDEX[end]] = value;
    return moved;
  };
  const high = cut.side === highSide(end);
  const taken: SceneBox = {
    lo: at(whole.lo, high ? inner : plane.toNumber()),
    hi: at(whole.hi, high ? plane.toNumber() : inner),
  };
  return [
    {
      shape: `cut bevel ${cut.side} of ${part.id}`,
      label: `${surfaceName(part, cut.side)} of ${part.id} bevelled ${degrees(cut.angle)}, its toe on the ${surfaceName(part, cut.outer)}`,
      places: places.statement(cut.source, joint ? [joint.entering, joint.host] : [part.id]),
      kind: 'bevel',
      surface: cut.side,
      box: taken,
      run,
      joint: cut.joint,
      outer: cut.outer,
      angle: cut.angle,
    },
  ];
}
