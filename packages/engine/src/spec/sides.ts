/** The cabinet's axes: x to the right as seen from the front, y from front to rear, z up. */
export type Axis = 'x' | 'y' | 'z';

/** The six sides of every part, whatever way the part stands. */
export type Side = 'left' | 'right' | 'front' | 'rear' | 'bottom' | 'top';

/** How a part stands: upright has its thickness along x, facing along y, level along z. */
export type Attitude = 'upright' | 'facing' | 'level';

/** The trade's word for an extent along each axis. */
export type Dimension = 'width' | 'depth' | 'height';

export const AXES: readonly Axis[] = ['x', 'y', 'z'];
export const SIDES: readonly Side[] = ['left', 'right', 'front', 'rear', 'bottom', 'top'];

const AXIS_OF: Record<Side, Axis> = {
  left: 'x',
  right: 'x',
  front: 'y',
  rear: 'y',
  bottom: 'z',
  top: 'z',
};
const LOW: Record<Axis, Side> = { x: 'left', y: 'front', z: 'bottom' };
const HIGH: Record<Axis, Side> = { x: 'right', y: 'rear', z: 'top' };
const OUTWARD: Record<Side, 1 | -1> = { left: -1, right: 1, front: -1, rear: 1, bottom: -1, top: 1 };
const OPPOSITE: Record<Side, Side> = {
  left: 'right',
  right: 'left',
  front: 'rear',
  rear: 'front',
  bottom: 'top',
  top: 'bottom',
};
const THICKNESS: Record<Attitude, Axis> = { upright: 'x', facing: 'y', level: 'z' };
const DIMENSION: Record<Axis, Dimension> = { x: 'width', y: 'depth', z: 'height' };
const AXIS_OF_DIMENSION: Record<Dimension, Axis> = { width: 'x', depth: 'y', height: 'z' };

/** The axis a side is perpendicular to. */
export const axisOf = (side: Side): Axis => AXIS_OF[side];
/** The side with the smaller coordinate on an axis. */
export const lowSide = (axis: Axis): Side => LOW[axis];
/** The side with the larger coordinate on an axis. */
export const highSide = (axis: Axis): Side => HIGH[axis];
export const isHigh = (side: Side): boolean => OUTWARD[side] === 1;
export const opposite = (side: Side): Side => OPPOSITE[side];
/** Sign of a side's outward normal along its axis: +1 for right, rear and top. */
export const outward = (side: Side): 1 | -1 => OUTWARD[side];
export const thicknessAxis = (attitude: Attitude): Axis => THICKNESS[attitude];
export const dimensionOf = (axis: Axis): Dimension => DIMENSION[axis];
export const axisOfDimension = (dimension: Dimension): Axis => AXIS_OF_DIMENSION[dimension];
/** The axis perpendicular to both; undefined when they are the same. */
export function thirdAxis(a: Axis, b: Axis): Axis | undefined {
  return a === b ? undefined : AXES.find((axis) => axis !== a && axis !== b);
}
/** True when the side is one of the part's two large faces, false when it is an edge. */
export const isFace = (side: Side, attitude: Attitude): boolean => axisOf(side) === thicknessAxis(attitude);
