import { countConnectors } from '../consumables/connectors.js';
import type { Fit, FittedJoint } from '../fit/fit.js';
import type { Vector } from '../geometry/vector.js';
import type { PartId } from '../spec/spec.js';
import type { Limits } from '../spec/stock.js';
import { type Apart, stuckIn, takeApart } from './apart.js';
import { assemblyOf, type Built } from './build.js';
import { clampsFor } from './clamps.js';
import { type Closing, sequenceOf } from './sequence.js';
import { whyStuck } from './stuck.js';

/** The order in which a cabinet is glued up. */
export interface GlueUp {
  readonly steps: readonly GlueStep[];
  /** Groups of parts that no order puts together; each is taken as one piece in the steps. */
  readonly stuck: readonly StuckParts[];
  /** Parts that only rest in place: they go in when all is done. */
  readonly loose: readonly PartId[];
  /** Parts whose place is not known. */
  readonly unplaced: readonly PartId[];
}

/** One step: closed, clamped and left to set before the next. */
export interface GlueStep {
  /** From 1. */
  readonly number: number;
  /** What is there already; empty when parts meet half way. */
  readonly onto: readonly PartId[];
  readonly coming: readonly ComingParts[];
  /** Ids of the joints that close in this step. */
  readonly joints: readonly string[];
  /** Joints that close only while the others of their list do, so that all of these are drawn together. */
  readonly together: readonly (readonly string[])[];
  /** Whether the parts move each its own way at the same time, as those of a mitred case do. */
  readonly allMove: boolean;
  readonly connectors: readonly { readonly connector: string; readonly count: number }[];
  readonly clamps: readonly Clamps[];
}

/** Parts that come as one piece, by one straight move or two; lengths in mm, the last leg's is open. */
export interface ComingParts {
  readonly parts: readonly PartId[];
  readonly legs: readonly { readonly way: Vector; readonly length?: number | undefined }[];
}

/** So many clamps that pull along a way, either way round. */
export interface Clamps {
  readonly along: Vector;
  readonly count: number;
}

export interface StuckParts {
  /** So few that without any one of them the others go together. */
  readonly parts: readonly PartId[];
  /** The joints between them. */
  readonly joints: readonly string[];
  /** Joints of which a single one, made without its connectors or with its recess open, would let them go together. */
  readonly freeing: readonly { readonly joint: string; readonly by: 'connectors' | 'recess' }[];
  /** False where there may be moves that were not tried. */
  readonly proven: boolean;
}

/** A cabinet as bodies and bonds, and how it comes apart by whichever moves are found first. */
export interface TakenApart extends Built {
  readonly apart: Apart;
}

export function takenApart(fit: Fit): TakenApart {
  const built = assemblyOf(fit);
  return { ...built, apart: takeApart(built.assembly) };
}

/** Groups of parts that no order puts together. */
export function stuckParts(fit: Fit, { assembly, apart } = takenApart(fit)): readonly StuckParts[] {
  const name = (member: number): PartId => assembly.items[member]?.id ?? '';
  return stuckIn(apart).map((stuck) => {
    const { members, links, freeing, proven } = whyStuck(assembly, stuck);
    return {
      parts: members.map(name),
      joints: links.map(({ joint }) => joint),
      freeing: freeing.map(({ link, by }) => ({ joint: link.joint, by })),
      proven,
    };
  });
}

/**
 * The steps of a glue-up, each closing at most `most` glued joints where an order allows it: no glue waits for a panel
 * that slides dry into its groove.
 */
export function glueUp(fit: Fit, most = Number.POSITIVE_INFINITY, known = takenApart(fit)): GlueUp {
  const { assembly, loose, unplaced } = known;
  // By the moves that make the clearest steps.
  const apart = takeApart(assembly, undefined, true);
  const partOf = new Map(fit.parts.map((part) => [part.id, part]));
  const jointOf = new Map(fit.joints.map((joint) => [joint.id, joint]));
  const name = (member: number): PartId => assembly.items[member]?.id ?? '';
  const steps = sequenceOf(apart, assembly.links, most).map((closing, i): GlueStep => {
    const joints = closing.links.flatMap(({ joint }) => jointOf.get(joint) ?? []);
    return {
      number: i + 1,
      onto: [...closing.onto].sort((a, b) => a - b).map(name),
      coming: closing.coming.map(({ members, legs }) => ({ parts: members.map(name), legs })),
      joints: joints.map(({ id }) => id),
      together: drawnTogether(closing),
      allMove: closing.atOnce,
      connectors: connectorsOf(joints),
      clamps: clampsFor(joints, (id) => partOf.get(id), waysOf(closing)),
    };
  });
  return { steps, stuck: stuckParts(fit, known), loose, unplaced };
}

/** Joints under pressure that one piece closes at a time, where it is more than one; all of a step where all move. */
function drawnTogether({ coming, links, atOnce }: Closing): GlueStep['together'] {
  const pressed = links.filter((link) => link.pressed);
  const lists = atOnce
    ? [pressed]
    : coming.map(({ members }) =>
        pressed.filter(({ entering, host }) => members.includes(entering) || members.includes(host)),
      );
  return lists.filter((list) => list.length > 1).map((list) => list.map(({ joint }) => joint));
}

const waysOf = ({ coming, atOnce }: Closing): readonly Vector[] | undefined =>
  atOnce ? undefined : coming.flatMap(({ legs }) => legs.slice(-1).map(({ way }) => way));

const connectorsOf = (joints: readonly FittedJoint[]): GlueStep['connectors'] =>
  countConnectors({ joints }).map(({ connector, count }) => ({ connector: connector.name, count }));

/** How many joints a shop can close before its glue sets; endless where it does not say. */
export function mostJoints({ glueOpen, jointTime }: Pick<Limits, 'glueOpen' | 'jointTime'>): number {
  if (!glueOpen || !jointTime || jointTime.sign() <= 0) return Number.POSITIVE_INFINITY;
  return Math.max(1, Math.floor(glueOpen.div(jointTime).toNumber()));
}
