import type { Vector } from './vector.js';

/**
 * A convex body, mm, in floating point. Two questions are enough to find how near two bodies come to each other:
 * which of its points is nearest to a place, and which lies farthest in a direction.
 */
export interface Solid extends Bounds {
  nearest(place: Vector): Vector;
  farthest(direction: Vector): Vector;
}

/** Corners of the box around a body, parallel to the axes, mm. */
export interface Bounds {
  readonly lo: Vector;
  readonly hi: Vector;
}

/** A body in its own frame: u along the run, v across it, w into the part; w ≥ 0. */
export interface Shape {
  nearest(u: number, v: number, w: number): Vector;
  farthest(u: number, v: number, w: number): Vector;
}

/** A frame of three unit directions at right angles, and where its origin lies. */
export interface Frame {
  readonly origin: Vector;
  readonly u: Vector;
  readonly v: Vector;
  readonly w: Vector;
}

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** A shape as it lies in the cabinet. */
export function place(shape: Shape, frame: Frame): Solid {
  const { origin, u, v, w } = frame;
  const outward = (p: Vector): Vector => [
    origin[0] + p[0] * u[0] + p[1] * v[0] + p[2] * w[0],
    origin[1] + p[0] * u[1] + p[1] * v[1] + p[2] * w[1],
    origin[2] + p[0] * u[2] + p[1] * v[2] + p[2] * w[2],
  ];
  const farthest = (d: Vector): Vector => outward(shape.farthest(dot(d, u), dot(d, v), dot(d, w)));
  return {
    nearest(p) {
      const from: Vector = [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]];
      return outward(shape.nearest(dot(from, u), dot(from, v), dot(from, w)));
    },
    farthest,
    lo: [farthest([-1, 0, 0])[0], farthest([0, -1, 0])[1], farthest([0, 0, -1])[2]],
    hi: [farthest([1, 0, 0])[0], farthest([0, 1, 0])[1], farthest([0, 0, 1])[2]],
  };
}
