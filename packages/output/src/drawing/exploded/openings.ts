import { AXES, axisOf, SIDES, type Side } from '@dryfit/engine';
import { planeAt, TOUCH } from '../scene/figures.js';
import type { SceneAlong, SceneBox, SceneCut, ScenePart } from '../scene.js';
import { clip, type Face } from './solid.js';
import { cross, dot, minus, normalOf, plus, times, unit, type Vector } from './vector.js';

/** Where a cut opens in the outside of a part: an outline in one of its faces. */
export interface Opening {
  readonly cut: SceneCut | SceneAlong;
  readonly side: Side;
  readonly bevel: boolean;
  readonly outline: readonly Vector[];
}

/** Every opening of every cut of a part; a groove that runs out at an end opens there too. A notch is in the outline. */
export function openingsOf(part: ScenePart, box: SceneBox): readonly Opening[] {
  const along = (part.along ?? []).map(
    (cut): Opening => ({
      cut,
      side: cut.surface ?? part.cuts.find(({ kind }) => kind === 'cant')?.surface ?? 'front',
      bevel: cut.surface === undefined,
      outline: cut.outline,
    }),
  );
  const square = part.cuts.flatMap((cut): readonly Opening[] => {
    if (cut.kind === 'notch' || cut.kind === 'bevel' || cut.kind === 'cant') return [];
    if (cut.mouth) return [mouthOf(cut, cut.mouth, box)];
    return SIDES.filter((side) => Math.abs(planeAt(cut.box, side) - planeAt(box, side)) < TOUCH).map((side) => ({
      cut,
      side,
      bevel: false,
      outline: sideOf(cut.box, side),
    }));
  });
  return [...square, ...along];
}

function sideOf(box: SceneBox, side: Side): readonly Vector[] {
  const axis = axisOf(side);
  const [a, b] = AXES.filter((other) => other !== axis).map(unit) as [Vector, Vector];
  const centre = times(plus(box.lo, box.hi), 0.5);
  const size = minus(box.hi, box.lo);
  const at = plus(minus(centre, times(unit(axis), dot(unit(axis), centre))), times(unit(axis), planeAt(box, side)));
  return rectangle(at, times(a, dot(a, size) / 2), times(b, dot(b, size) / 2));
}

const rectangle = (at: Vector, a: Vector, b: Vector): readonly Vector[] => [
  minus(minus(at, a), b),
  minus(plus(at, a), b),
  plus(plus(at, a), b),
  plus(minus(at, a), b),
];

const STEPS = 6;

/** A slot's opening: square-ended for a disc, round-ended for a mortise, round for a hole. */
function mouthOf(cut: SceneCut, mouth: NonNullable<SceneCut['mouth']>, box: SceneBox): Opening {
  const run = unit(cut.run);
  const middle = times(plus(cut.box.lo, cut.box.hi), 0.5);
  const onRun = times(run, dot(run, middle));
  const mitred = cut.outer !== undefined && cut.fromToe !== undefined;
  const [at, across] = mitred ? onMitre(cut, box, onRun) : onSide(cut, middle);
  const [half, wide] = [mouth.length / 2, mouth.width / 2];
  const outline =
    cut.kind === 'disc'
      ? rectangle(at, times(run, half), times(across, wide))
      : rounded(at, run, across, Math.max(0, half - wide), Math.min(wide, half));
  return { cut, side: cut.surface, bevel: mitred, outline };
}

function onSide(cut: SceneCut, middle: Vector): readonly [Vector, Vector] {
  const normal = unit(axisOf(cut.surface));
  const across = AXES.find((axis) => axis !== cut.run && axis !== axisOf(cut.surface)) ?? cut.run;
  const at = plus(minus(middle, times(normal, dot(normal, middle))), times(normal, planeAt(cut.box, cut.surface)));
  return [at, unit(across)];
}

function onMitre(cut: SceneCut, box: SceneBox, onRun: Vector): readonly [Vector, Vector] {
  const outer = cut.outer as Side;
  const on = (side: Side): Vector => times(unit(axisOf(side)), planeAt(box, side));
  const angle = ((cut.angle ?? 45) * Math.PI) / 180;
  const along = minus(times(normalOf(cut.surface), -Math.sin(angle)), times(normalOf(outer), Math.cos(angle)));
  return [plus(plus(onRun, plus(on(cut.surface), on(outer))), times(along, cut.fromToe ?? 0)), along];
}

function rounded(at: Vector, run: Vector, across: Vector, reach: number, radius: number): readonly Vector[] {
  const end = (way: 1 | -1): Vector[] =>
    Array.from({ length: STEPS + 1 }, (_, i) => {
      const angle = -Math.PI / 2 + (Math.PI * i) / STEPS;
      const out = way * (reach + Math.cos(angle) * radius);
      return plus(plus(at, times(run, out)), times(across, way * Math.sin(angle) * radius));
    });
  return [...end(1), ...end(-1)];
}

/** What of an opening lies in a face of a piece; nothing if it is in another plane. */
export function openingIn(face: Face, { side, bevel, outline }: Opening): readonly Vector[] {
  if (face.side !== side || face.bevel !== bevel) return [];
  const plane = dot(face.normal, face.corners[0] as Vector);
  if (outline.some((p) => Math.abs(dot(face.normal, p) - plane) > TOUCH * 100)) return [];
  return within(face, outline);
}

/** An outline clipped to a face, whichever way round its corners go. */
function within(face: Face, outline: readonly Vector[]): readonly Vector[] {
  const centre = times(face.corners.reduce(plus), 1 / face.corners.length);
  return face.corners.reduce((left: readonly Vector[], p, i) => {
    const q = face.corners[(i + 1) % face.corners.length] as Vector;
    const edge = minus(q, p);
    const out = cross(face.normal, edge);
    const away = dot(out, minus(centre, p)) > 0 ? times(out, -1) : out;
    const length = Math.hypot(...away);
    return length < TOUCH ? left : clip(left, times(away, 1 / length), dot(away, p) / length);
  }, outline);
}
