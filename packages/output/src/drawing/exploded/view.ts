import { dot, type Vector } from './vector.js';

/** How a cabinet is looked at. */
export interface View {
  /** Degrees the reader has walked round it to the right, from straight before its front. */
  readonly turn: number;
  /** Degrees the reader looks down on it; negative from below. */
  readonly tilt: number;
  /** How far its parts are pulled apart: 0 together, 1 as far as is useful. */
  readonly apart: number;
}

export const USUAL_VIEW: View = { turn: 30, tilt: 22, apart: 0.6 };

/** Directions of a parallel projection: to the right and up on paper, and out of the paper toward the reader. */
export interface Eye {
  readonly right: Vector;
  readonly up: Vector;
  readonly toward: Vector;
}

export function eyeOf(view: View): Eye {
  const [t, p] = [whole(view.turn), Math.max(-90, Math.min(90, whole(view.tilt)))].map(
    (degrees) => (degrees * Math.PI) / 180,
  ) as [number, number];
  const clean = (v: Vector): Vector => v.map((n) => (Math.abs(n) < 1e-12 ? 0 : n)) as unknown as Vector;
  const [sinT, cosT, sinP, cosP] = [Math.sin(t), Math.cos(t), Math.sin(p), Math.cos(p)];
  return {
    right: clean([cosT, sinT, 0]),
    up: clean([-sinT * sinP, cosT * sinP, cosP]),
    toward: clean([sinT * cosP, -cosT * cosP, sinP]),
  };
}

const whole = (n: number): number => (Number.isFinite(n) ? n : 0);

export type Flat = readonly [x: number, y: number];

/** A point on paper, mm; y runs down as in SVG. */
export const onPaper = (eye: Eye, p: Vector): Flat => [dot(eye.right, p), -dot(eye.up, p)];
