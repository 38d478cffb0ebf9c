import type { Bounds } from '../geometry/solid.js';
import { cross, dot, type Vector } from '../geometry/vector.js';
import type { HalfSpace } from './body.js';

/** A convex body as the planes around it. */
export type Polytope = readonly HalfSpace[];

/** Rounding of corners, mm, and what is too thin to be a body, mm: far below anything that can be made. */
const ROUNDING = 1e-7;
const NOTHING = 1e-6;

/** What is left of a convex body when another is taken out of it: at most one piece a plane of the other. */
export function polytopeWithout(whole: Polytope, taken: Polytope): readonly Polytope[] {
  if (!boundsOfPolytope([...whole, ...taken])) return [whole];
  const pieces: Polytope[] = [];
  let core = whole;
  for (const space of taken) {
    const beyond = [...core, { normal: scaled(space.normal, -1), offset: -space.offset }];
    if (boundsOfPolytope(beyond)) pieces.push(beyond);
    core = [...core, space];
  }
  return pieces;
}

/** The box around a convex body; undefined where there is nothing inside its planes, or only a film. */
export function boundsOfPolytope(spaces: Polytope): Bounds | undefined {
  const corners = cornersOf(spaces);
  if (corners.length < 4) return undefined;
  const thin = spaces.some(({ normal }) => {
    const along = corners.map((corner) => dot(normal, corner));
    return (Math.max(...along) - Math.min(...along)) / length(normal) < NOTHING;
  });
  if (thin) return undefined;
  const on = (i: 0 | 1 | 2) => corners.map((corner) => corner[i]);
  return {
    lo: [Math.min(...on(0)), Math.min(...on(1)), Math.min(...on(2))],
    hi: [Math.max(...on(0)), Math.max(...on(1)), Math.max(...on(2))],
  };
}

/** Where three planes meet inside all the others. Bodies here have about ten planes, so that all triples are tried. */
function cornersOf(spaces: Polytope): readonly Vector[] {
  const corners: Vector[] = [];
  for (let i = 0; i < spaces.length; i++)
    for (let j = i + 1; j < spaces.length; j++)
      for (let k = j + 1; k < spaces.length; k++) {
        const corner = meet(spaces[i] as HalfSpace, spaces[j] as HalfSpace, spaces[k] as HalfSpace);
        if (corner && spaces.every((space) => inside(corner, space))) corners.push(corner);
      }
  return corners;
}

const inside = (p: Vector, { normal, offset }: HalfSpace): boolean =>
  dot(normal, p) - offset <= ROUNDING * length(normal);

/** By Cramer's rule; undefined where two of the planes are parallel or all three share a line's direction. */
function meet(a: HalfSpace, b: HalfSpace, c: HalfSpace): Vector | undefined {
  const [bc, ca, ab] = [cross(b.normal, c.normal), cross(c.normal, a.normal), cross(a.normal, b.normal)];
  const volume = dot(a.normal, bc);
  if (Math.abs(volume) < 1e-9 * length(a.normal) * length(b.normal) * length(c.normal)) return undefined;
  const at = (i: 0 | 1 | 2): number => (a.offset * bc[i] + b.offset * ca[i] + c.offset * ab[i]) / volume;
  return [at(0), at(1), at(2)];
}

const length = (v: Vector): number => Math.hypot(v[0], v[1], v[2]);
const scaled = (v: Vector, k: number): Vector => [v[0] * k, v[1] * k, v[2] * k];
