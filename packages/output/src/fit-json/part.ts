import { AXES, axisOfDimension, type Dimension, dimensionOf, type FitResult, type FittedPart } from '@dryfit/engine';
import { type Locate, placeOf } from '../place.js';
import { byText } from '../print/order.js';
import { type CutFigures, otherCuts } from '../tables/cuts.js';
import { approximate, exact, known, maybe } from './lengths.js';
import type { PartJson } from './schema.js';
import { turnJson } from './turn.js';

/** A part as fit.json writes it; `piece` is the id of the first part that is the same piece. */
export function partJson(result: FitResult, part: FittedPart, piece: string, locate: Locate): PartJson {
  const sizes = AXES.map((axis) => [dimensionOf(axis), sizeJson(result, part, dimensionOf(axis), locate)]);
  const { box, cutSize } = part;
  return known<PartJson>({
    id: part.id,
    kind: part.kind,
    index: part.index,
    piece,
    attitude: part.attitude,
    material: part.material,
    grain: dimensionOf(part.grain),
    place: placeOf(part.source, locate),
    turn: part.turn && turnJson(part.turn),
    span: part.width && approximate(part.width),
    planes: box && {
      left: exact(box.lo.x),
      right: exact(box.hi.x),
      front: exact(box.lo.y),
      rear: exact(box.hi.y),
      bottom: exact(box.lo.z),
      top: exact(box.hi.z),
    },
    ...(Object.fromEntries(sizes) as Pick<PartJson, Dimension>),
    cut: cutSize && {
      length: exact(cutSize.length),
      width: exact(cutSize.width),
      thickness: exact(cutSize.thickness),
    },
    bands: [...part.bands]
      .sort((a, b) => byText(a.side, b.side))
      .map((band) => ({ side: band.side, band: band.band, thickness: exact(band.thickness) })),
    cuts: otherCuts(part).map(cutJson),
  });
}

function sizeJson(result: FitResult, part: FittedPart, dimension: Dimension, locate: Locate): PartJson[Dimension] {
  const axis = axisOfDimension(dimension);
  const extent = part.extent[axis];
  if (extent === undefined) return undefined;
  const reasons = result.reasons(part.id, axis).map((reason) =>
    known({
      statement: reason.statement,
      text: reason.text,
      adds: exact(reason.adds),
      place: placeOf(reason.source, locate),
    }),
  );
  reasons.sort((a, b) => byText(a.statement, b.statement) || byText(a.text, b.text) || a.adds.mm - b.adds.mm);
  return { length: exact(extent), reasons };
}

function cutJson(cut: CutFigures): PartJson['cuts'][number] {
  const { inFrom, run } = cut;
  return known({
    kind: cut.kind,
    surface: cut.surface,
    toe: cut.toe,
    angle: cut.angle === undefined || cut.angle === 45 ? undefined : cut.angle,
    legs: cut.legs?.map(({ side, at }) => ({ side, distance: exact(at) })),
    inFrom: inFrom && { side: inFrom.side, distance: exact(inFrom.at) },
    width: maybe(cut.width),
    depth: maybe(cut.depth),
    run: run && { end: run.end, from: exact(run.from), to: exact(run.to), through: run.through },
  });
}
