import type { Box, FittedBand, FittedJoint, FittedPart, Point } from '../fit/fit.js';
import { bandsOf } from '../joints/bench.js';
import { rangeOf } from '../joints/place.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import {
  type Attitude,
  AXES,
  type Axis,
  axisOf,
  axisOfDimension,
  highSide,
  isHigh,
  lowSide,
  type Side,
} from '../spec/sides.js';
import type { PartSpec } from '../spec/spec.js';
import { frameOf } from '../turned/frame.js';
import { FLUSH, fittedCant, reachOf } from '../turned/parts.js';
import { cutsByPart } from './cuts.js';
import { numberPieces, pieceAxes } from './same.js';

/** The way the grain runs unless a part says otherwise: up an upright or facing part, across a level one. */
const GRAIN: Record<Attitude, Axis> = { upright: 'z', facing: 'z', level: 'x' };

/** Every part as it comes out, with what is cut into it. */
export function fitParts(solved: Solved, joints: readonly FittedJoint[]): readonly FittedPart[] {
  const cuts = cutsByPart(solved, joints);
  const parts = solved.spec.parts.map((part): FittedPart => {
    const bands = bandsOf(solved.spec, part.id);
    const frame = frameOf(solved, part);
    const own = frame ?? solved;
    const extent = { x: own.extent(part.id, 'x'), y: own.extent(part.id, 'y'), z: own.extent(part.id, 'z') };
    const grain = part.grain ? axisOfDimension(part.grain) : GRAIN[part.attitude];
    const box = boxOf(own, part);
    return {
      id: part.id,
      kind: part.kind,
      index: part.index,
      attitude: part.attitude,
      material: part.material,
      source: part.source,
      turn: frame?.span.turn,
      width: frame?.span.width,
      cant: fittedCant(solved, part),
      box,
      extent,
      grain,
      cutSize: box && cutSize(part, extent, grain, bands),
      bands,
      cuts: cuts.get(part.id) ?? [],
      same: 0,
    };
  });
  return numberPieces(parts);
}

function boxOf(solved: Solved, part: PartSpec): Box | undefined {
  const [x, y, z] = AXES.map((axis) => rangeOf(solved, part.id, axis));
  if (!x || !y || !z || [x, y, z].some(({ lo, hi }) => lo.gt(hi))) return undefined;
  return { lo: { x: x.lo, y: y.lo, z: z.lo }, hi: { x: x.hi, y: y.hi, z: z.hi } };
}

/** Finished sizes less the bands on both ends, as length along the grain, width across it, thickness. */
function cutSize(
  part: PartSpec,
  extent: FittedPart['extent'],
  grain: Axis,
  bands: readonly FittedBand[],
): FittedPart['cutSize'] {
  const core = (axis: Axis): Rational | undefined =>
    extent[axis]?.sub(Rational.sum(bands.filter((band) => axisOf(band.side) === axis).map((band) => band.thickness)));
  const axes = pieceAxes({ attitude: part.attitude, grain });
  const [length, width, thickness] = [core(axes.length), core(axes.width), core(axes.thickness)];
  return length && width && thickness ? { length, width, thickness } : undefined;
}

/** Outside size over all parts; undefined while a part is not fixed or there is none. */
export function outsideOf(parts: readonly FittedPart[]): Point | undefined {
  if (parts.length === 0 || parts.some(({ box }) => box === undefined)) return undefined;
  const turned = (part: FittedPart, side: Side): boolean => part.turn !== undefined && axisOf(side) !== 'z';
  const farthest = (side: Side, ends: readonly (Rational | undefined)[]): Rational | undefined => {
    const [first, ...others] = ends.filter((at) => at !== undefined);
    return first && (isHigh(side) ? Rational.max(first, ...others) : Rational.min(first, ...others));
  };
  const end = (side: Side): Rational => {
    const [axis, high] = [axisOf(side), isHigh(side)];
    const level = parts.flatMap((part) => (turned(part, side) ? [] : [high ? part.box?.hi[axis] : part.box?.lo[axis]]));
    const exact = farthest(side, level);
    const reached = farthest(
      side,
      parts.flatMap((part) => (turned(part, side) ? [reachOf(part, side)] : [])),
    );
    if (!exact || !reached) return exact ?? reached ?? Rational.ZERO;
    const beyond = high ? reached.sub(exact) : exact.sub(reached);
    return beyond.gt(FLUSH) ? reached : exact;
  };
  const size = (axis: Axis): Rational => end(highSide(axis)).sub(end(lowSide(axis)));
  return { x: size('x'), y: size('y'), z: size('z') };
}
