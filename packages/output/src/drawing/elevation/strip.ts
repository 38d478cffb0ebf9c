import { axisOf, type Side } from '@dryfit/engine';
import { AXIS_NUMBER } from '../exploded/vector.js';
import type { SceneBox, SceneCut, ScenePart } from '../scene.js';
import type { Patch } from './ink.js';
import { alongPaper, distanceFrom, type Flank, isLevel, type Sheet } from './look.js';
import { middleOf } from './measures.js';

/** An edge laid out flat beside the face it meets. */
export interface Strip {
  readonly side: Side;
  readonly flank: Flank;
  /** Where it begins and ends, outward from the face, on paper. */
  readonly near: number;
  readonly far: number;
  /** Its width, mm: the part's thickness, or of a bevelled end the width of the mitre face. */
  readonly width: number;
  /** Of a bevelled end, whether its toe is next to the face. */
  readonly toe?: 'near' | 'far' | undefined;
}

/** Between a face and what is drawn beside it: room for hatching. */
export const GAP = 14;
// Thinner than this nobody can see what is cut into an edge; such edges are drawn wider than to scale.
const LEAST = 24;

export function stripOf(sheet: Sheet, part: ScenePart, side: Side, flank: Flank): Strip {
  const axis = axisOf(sheet.look.face);
  const thick = sheet.box.hi[AXIS_NUMBER[axis]] - sheet.box.lo[AXIS_NUMBER[axis]];
  const bevel = part.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === side);
  const width = bevel ? thick / Math.cos(((bevel.angle ?? 45) * Math.PI) / 180) : thick;
  const toe = bevel && (bevel.outer === sheet.look.face ? 'near' : 'far');
  return { side, flank, near: GAP, far: GAP + Math.max(LEAST, width * sheet.scale), width, toe };
}

/** How far out a place of the edge falls that lies `depth` mm from the face. */
export const outAt = ({ near, far, width }: Strip, depth: number): number => near + ((far - near) * depth) / width;

/** Where the middle of a slot lies across the strip, mm from the face. */
export function depthIn(strip: Strip, sheet: Sheet, cut: SceneCut): number {
  if (cut.fromToe !== undefined && strip.toe !== undefined)
    return strip.toe === 'near' ? cut.fromToe : strip.width - cut.fromToe;
  return distanceFrom(sheet.box, sheet.look.face, middleOf(cut, axisOf(sheet.look.face)));
}

/** A box of the cabinet frame on the strip: along the border, and outward. */
export function onStrip(strip: Strip, sheet: Sheet, box: SceneBox): Patch {
  const along = axisOf(isLevel(strip.flank) ? sheet.look.at.right : sheet.look.at.top);
  const deep = AXIS_NUMBER[axisOf(sheet.look.face)];
  const stretch = [box.lo, box.hi].map((p) => alongPaper(sheet, along, p[AXIS_NUMBER[along]]));
  const depths = [box.lo, box.hi].map((p) => outAt(strip, distanceFrom(sheet.box, sheet.look.face, p[deep])));
  return asPatch(strip.flank, sheet, stretch, depths);
}

/** A slot's opening on the strip. */
export function mouthOn(strip: Strip, sheet: Sheet, cut: SceneCut): Patch {
  const { length, width } = cut.mouth ?? { length: 0, width: 0 };
  const along = alongPaper(sheet, cut.run, middleOf(cut, cut.run));
  const depth = depthIn(strip, sheet, cut);
  const half = (length * sheet.scale) / 2;
  return asPatch(
    strip.flank,
    sheet,
    [along - half, along + half],
    [outAt(strip, depth - width / 2), outAt(strip, depth + width / 2)],
  );
}

/** From along a border and outward from it to a rectangle on paper. */
export function asPatch(flank: Flank, sheet: Sheet, along: readonly number[], out: readonly number[]): Patch {
  const corners = along.flatMap((a) => out.map((o) => placeOn(flank, sheet)(a, o)));
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Paper beside a face: along one of its borders and outward from it. */
export function placeOn(
  flank: Flank,
  { width, height }: Sheet,
): (along: number, out: number) => readonly [number, number] {
  switch (flank) {
    case 'top':
      return (along, out) => [along, -out];
    case 'bottom':
      return (along, out) => [along, height + out];
    case 'left':
      return (along, out) => [-out, along];
    case 'right':
      return (along, out) => [width + out, along];
  }
}
