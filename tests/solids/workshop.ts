import Module, { type Manifold, type ManifoldToplevel, type Mat4 } from 'manifold-3d';
import type { Vector } from '../support/vectors.js';

/** Something the kernel made, to be given back to it. */
interface Made {
  delete(): void;
}

/**
 * The mesh kernel, and the meshes made in it. What it makes lives outside of JavaScript's memory, so it is all kept in
 * a list and given back at once.
 */
export class Workshop {
  private made: Made[] = [];
  private readonly known = new Map<object, Manifold>();
  /** The farthest that any arc's chord has been from its arc, mm. */
  chordError = 0;

  private constructor(private readonly kernel: ManifoldToplevel) {}

  static async open(): Promise<Workshop> {
    const kernel = await Module();
    kernel.setup();
    return new Workshop(kernel);
  }

  keep<T extends Made>(it: T): T {
    this.made.push(it);
    return it;
  }

  /** What is asked for more than once is made once, until it is all given back. */
  once(of: object, make: () => Manifold): Manifold {
    const mesh = this.known.get(of) ?? make();
    this.known.set(of, mesh);
    return mesh;
  }

  sweepUp(): void {
    for (const it of this.made) it.delete();
    this.made = [];
    this.known.clear();
  }

  box(lo: Vector, hi: Vector): Manifold {
    const size = [hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]] as [number, number, number];
    return this.keep(this.keep(this.kernel.Manifold.cube(size)).translate([lo[0], lo[1], lo[2]]));
  }

  /** A flat outline in a frame, pushed `deep` along its third direction; the directions may be left-handed. */
  prism(outline: readonly (readonly [number, number])[], deep: number, frame: Frame): Manifold {
    const ring = outline.map(([x, y]) => [x, y] as [number, number]);
    const solid = this.keep(this.kernel.Manifold.extrude([isCounterClockwise(ring) ? ring : ring.reverse()], deep));
    const { first: a, second: b, third: c, origin: o } = frame;
    const matrix: Mat4 = [a[0], a[1], a[2], 0, b[0], b[1], b[2], 0, c[0], c[1], c[2], 0, o[0], o[1], o[2], 1];
    return this.keep(solid.transform(matrix));
  }

  /** The points of an arc about a centre, both ends among them, its chords no farther off than `FINE`. */
  arc(centre: readonly [number, number], radius: number, from: number, to: number): [number, number][] {
    const most = 2 * Math.acos(1 - FINE / radius);
    const steps = Math.max(2, Math.ceil(Math.abs(to - from) / most));
    const points = Array.from({ length: steps + 1 }, (_, i): [number, number] => {
      const angle = from + ((to - from) * i) / steps;
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
    });
    for (const [i, [x, y]] of points.entries()) {
      const next = points[i + 1];
      if (!next) continue;
      const middle = Math.hypot((x + next[0]) / 2 - centre[0], (y + next[1]) / 2 - centre[1]);
      this.chordError = Math.max(this.chordError, radius - middle);
    }
    return points;
  }

  both(a: Manifold, b: Manifold): Manifold {
    return this.keep(a.intersect(b));
  }

  less(a: Manifold, ...others: readonly Manifold[]): Manifold {
    return others.reduce((left, other) => this.keep(left.subtract(other)), a);
  }

  pieces(whole: Manifold): readonly Manifold[] {
    return whole.decompose().map((piece) => this.keep(piece));
  }
}

/**
 * To a 16,384th of a millimetre: the kernel keeps coordinates in single precision, and what touches exactly must neither
 * overlap nor gape by rounding.
 */
export const onGrid = (length: number): number => Math.round(length * 2 ** 14) / 2 ** 14;

/** By the sign of twice its area (the shoelace formula). */
const isCounterClockwise = (ring: readonly (readonly [number, number])[]): boolean =>
  ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length] as readonly [number, number];
    return sum + x * v - u * y;
  }, 0) > 0;

/** How far a chord may be off its arc, mm: a little less than the 0.005 that is promised. */
const FINE = 0.0045;

/** Where the three directions of a prism lie in the cabinet, and its corner. */
export interface Frame {
  readonly first: Vector;
  readonly second: Vector;
  readonly third: Vector;
  readonly origin: Vector;
}
