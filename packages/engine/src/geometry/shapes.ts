import type { Shape } from './solid.js';

const clamp = (x: number, lo: number, hi: number): number => Math.max(lo, Math.min(x, hi));
const towards = (direction: number, lo: number, hi: number): number => (direction < 0 ? lo : hi);

/** A box `along` × `across` round the origin's line, from the surface to `depth`. */
export function boxShape(along: number, across: number, depth: number): Shape {
  const a = along / 2;
  const b = across / 2;
  return {
    nearest: (u, v, w) => [clamp(u, -a, a), clamp(v, -b, b), clamp(w, 0, depth)],
    farthest: (u, v, w) => [towards(u, -a, a), towards(v, -b, b), towards(w, 0, depth)],
  };
}

/** What a drill of `diameter` leaves at `depth`; its point is not reckoned. */
export function holeShape(diameter: number, depth: number): Shape {
  return mortiseShape(diameter, diameter, depth);
}

/** A slot with round ends, `length` over all and `width` across, milled square to the surface. */
export function mortiseShape(length: number, width: number, depth: number): Shape {
  const radius = width / 2;
  const reach = Math.max(0, length / 2 - radius);
  return {
    nearest(u, v, w) {
      const middle = clamp(u, -reach, reach);
      const off = Math.hypot(u - middle, v);
      const k = off > radius ? radius / off : 1;
      return [middle + (u - middle) * k, v * k, clamp(w, 0, depth)];
    },
    farthest(u, v, w) {
      const off = Math.hypot(u, v);
      const k = off > 0 ? radius / off : 0;
      return [towards(u, -reach, reach) + u * k, v * k, towards(w, 0, depth)];
    },
  };
}

/**
 * What a disc cutter of `diameter` and `kerf` leaves at a plunge of `depth`: the part of the circle under the
 * surface, whose centre lies depth − diameter/2 below it. Plunged past its middle the disc leaves straight
 * sides down to the centre.
 */
export function discShape(diameter: number, kerf: number, depth: number): Shape {
  const radius = diameter / 2;
  const centre = depth - radius;
  const half = centre >= 0 ? radius : Math.sqrt(depth * (diameter - depth));
  const k = kerf / 2;
  const inCircle = (u: number, w: number): readonly [number, number] => {
    const off = Math.hypot(u, w - centre);
    return off > radius ? [(u * radius) / off, centre + ((w - centre) * radius) / off] : [u, w];
  };
  return {
    nearest(u, v, w) {
      const y = clamp(v, -k, k);
      if (w >= 0 && w < centre) return [clamp(u, -radius, radius), y, w];
      const [x, z] = centre >= 0 && w < 0 ? [u, w] : inCircle(u, w);
      return z >= 0 ? [x, y, z] : [clamp(u, -half, half), y, 0];
    },
    farthest(u, v, w) {
      const y = towards(v, -k, k);
      const off = Math.hypot(u, w);
      const z = off > 0 ? centre + (w * radius) / off : depth;
      if (z < 0 || (centre > 0 && w < 0)) return [towards(u, -half, half), y, 0];
      return [off > 0 ? (u * radius) / off : 0, y, z];
    },
  };
}
