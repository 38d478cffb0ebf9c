import { type Axis, axisOf, opposite, outward, type Side } from '@dryfit/engine';
import { AXIS_NUMBER, type Vector } from '../exploded/vector.js';
import type { Flat } from '../exploded/view.js';
import { planeAt } from '../scene/figures.js';
import type { SceneBox } from '../scene.js';

/** The four borders of a face on paper. */
export type Flank = 'left' | 'right' | 'top' | 'bottom';

export const FLANKS: readonly Flank[] = ['top', 'bottom', 'left', 'right'];

/**
 * How a face is seen from outside the part: which of the part's sides lies at which border of the paper. Uprights
 * and facing parts stand as they stand in the cabinet; a level part is seen with its rear upward.
 */
export interface Look {
  readonly face: Side;
  readonly at: Readonly<Record<Flank, Side>>;
}

// Whoever stands before a face with this side upward has that one at the right hand: up × outward normal.
const AT_THE_RIGHT: Readonly<Record<Side, Side>> = {
  front: 'right',
  rear: 'left',
  right: 'rear',
  left: 'front',
  top: 'right',
  bottom: 'left',
};

export function lookAt(face: Side): Look {
  const top: Side = axisOf(face) === 'z' ? 'rear' : 'top';
  const right = AT_THE_RIGHT[face];
  return { face, at: { top, bottom: opposite(top), right, left: opposite(right) } };
}

/** The border a side lies at; undefined for the face itself and its opposite. */
export const flankOf = (look: Look, side: Side): Flank | undefined => FLANKS.find((flank) => look.at[flank] === side);

export const isLevel = (flank: Flank): boolean => flank === 'top' || flank === 'bottom';

/** Axes of the paper. */
export const acrossPaper = (look: Look): Axis => axisOf(look.at.right);
export const upPaper = (look: Look): Axis => axisOf(look.at.top);

/** A face on paper: its size, and where each place of the cabinet falls, from its upper left corner. */
export interface Sheet {
  readonly look: Look;
  readonly box: SceneBox;
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

export function sheetOf(look: Look, box: SceneBox, scale: number): Sheet {
  const size = (axis: Axis) => (box.hi[AXIS_NUMBER[axis]] - box.lo[AXIS_NUMBER[axis]]) * scale;
  return { look, box, scale, width: size(acrossPaper(look)), height: size(upPaper(look)) };
}

/** How far in from a side of the part a coordinate lies, mm; negative outside, where a slot runs out over an edge. */
export const distanceFrom = (box: SceneBox, side: Side, at: number): number =>
  (planeAt(box, side) - at) * outward(side);

/** Along the border `flank` from the left, or from the top. */
export function alongPaper({ look, box, scale }: Sheet, axis: Axis, at: number): number {
  return distanceFrom(box, axis === acrossPaper(look) ? look.at.left : look.at.top, at) * scale;
}

export function onFace(sheet: Sheet, p: Vector): Flat {
  const [across, up] = [acrossPaper(sheet.look), upPaper(sheet.look)];
  return [alongPaper(sheet, across, p[AXIS_NUMBER[across]]), alongPaper(sheet, up, p[AXIS_NUMBER[up]])];
}
