import type { Bounds } from '../geometry/solid.js';
import type { Vector } from '../geometry/vector.js';
import type { HalfSpace } from '../solids/body.js';
import type { PartId } from '../spec/spec.js';

/** A convex piece of a part, mm in the cabinet frame: a box, less what its slants take off. */
export interface Piece extends Bounds {
  readonly slants: readonly HalfSpace[];
  /** Of a piece with slants: a box that lies wholly inside it, where one is known. */
  readonly core?: Bounds | undefined;
}

/** A part as it is handled: what of it is left when its recesses are cut. Its pieces do not overlap. */
export interface Item {
  readonly id: PartId;
  readonly pieces: readonly Piece[];
}

/** Two items, by their place in the list, held to one way of coming apart: connectors that stand in both. */
export interface Bond extends Pair {
  readonly joint: string;
  /** The way the entering item leaves the host; of any length. */
  readonly way: Vector;
  /** How far it has to go until the connectors are out, mm. */
  readonly length: number;
}

/** Two items that touch in a slanting plane: the entering one may leave by any way with normal · way ≥ 0. */
export interface Slope extends Pair {
  readonly normal: Vector;
}

/** Two items that a joint brings together, whatever holds them. */
export interface Link extends Pair {
  readonly joint: string;
  /** Closed under pressure, as a glued joint is; a panel in a groove only slides. */
  readonly pressed: boolean;
  /** Glue is spread on it, which waits only so long. */
  readonly glued: boolean;
  /** Let into a groove, a housing or a rebate. */
  readonly letIn: boolean;
}

/** What is to be put together, and what stands in the way of each part's moves. */
export interface Assembly {
  readonly items: readonly Item[];
  readonly bonds: readonly Bond[];
  readonly slopes: readonly Slope[];
  readonly links: readonly Link[];
  /** Pairs taken not to be in each other's way: a question of what if, never a fact. */
  readonly passing?: readonly Pair[] | undefined;
}

export interface Pair {
  readonly entering: number;
  readonly host: number;
}
