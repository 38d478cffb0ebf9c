import type { Bounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import type { Tolerance } from '../spec/input.js';
import type { Attitude, Axis, Side } from '../spec/sides.js';
import type { Source } from '../spec/source.js';
import type { ParameterValue, PartId, Spec, Verb } from '../spec/spec.js';
import type { Connector, Machine } from '../spec/stock.js';
import type { JointError } from '../tolerance/joint-errors.js';
import type { Finding } from './finding.js';

/** A point in the cabinet frame, mm. */
export interface Point {
  readonly x: Rational;
  readonly y: Rational;
  readonly z: Rational;
}

/** An axis-aligned box in the cabinet frame, mm; lo ≤ hi on every axis. */
export interface Box {
  readonly lo: Point;
  readonly hi: Point;
}

/**
 * A frame turned about the upright: where its origin lies in the cabinet, and which way its x runs there. Its y runs a
 * quarter turn to the left of its x, seen from above, and its z is the cabinet's, so that a hand stays a hand. Exact.
 */
export interface Turn {
  readonly origin: { readonly x: Rational; readonly y: Rational };
  /** Direction of its x; the length is of no account. */
  readonly along: { readonly x: Rational; readonly y: Rational };
}

/**
 * A corner cut straight off a part's outline, through its whole thickness: on each of the two sides that met there, how
 * much of the part's extent is gone, mm. The line between the two ends of the cut is exact.
 */
export interface FittedCant {
  /** Two edges of the part; `legs[i]` is measured inward from `corner[i]`. */
  readonly corner: readonly [Side, Side];
  readonly legs: readonly [Rational, Rational];
  readonly source: Source;
}

/** How one size of a part was arrived at. */
export interface Reason {
  /** The statement or default fact it rests on. */
  readonly statement: string;
  readonly source?: Source | undefined;
  /** In the trade's words: "width 600 over lh and rh", "lh is 17.7 thick (birch18, measured)". */
  readonly text: string;
  /** What it adds to the size, mm; zero for a fact that only ties two planes together. */
  readonly adds: Rational;
  /** Where a share of a length is added, as by even openings: which share, of how many mm. */
  readonly share?: { readonly part: Rational; readonly of: Rational } | undefined;
}

/** A band glued on a side. */
export interface FittedBand {
  readonly side: Side;
  readonly band: string;
  readonly thickness: Rational;
}

/** A volume taken out of a part, in the cabinet frame. */
export type Cut =
  /** A disc plunged `depth` into `surface`; `centre` is the middle of its mouth, the disc lies in the plane of run and normal. */
  | SlotCut<'disc'>
  /** A slot with round ends, `length` over all. */
  | SlotCut<'mortise'>
  /** A round hole. */
  | SlotCut<'hole'>
  | {
      readonly kind: 'groove' | 'rebate' | 'housing' | 'notch';
      readonly box: Box;
      /** The side the cut opens to (a notch: the first side of its corner). */
      readonly surface: Side;
      /** Axis a groove, rebate or housing runs along. */
      readonly run: Axis;
      readonly joint?: string | undefined;
      readonly source: Source;
    }
  /** The end `side` is bevelled: the toe lies on `outer`, `angle` degrees off square (a double; 45 at a square corner). */
  | {
      readonly kind: 'bevel';
      readonly side: Side;
      readonly outer: Side;
      readonly angle: number;
      readonly joint: string;
      readonly source: Source;
    };

export interface SlotCut<K extends 'disc' | 'mortise' | 'hole'> {
  readonly kind: K;
  readonly slot: string;
  /** Present where `surface`, `centre` and `run` are told in another frame than the part's own: that of the part it meets. */
  readonly turn?: Turn | undefined;
  readonly surface: Side;
  /** Middle of the mouth; in a mitre face `fromToe` says where across, and this point is on the toe line. */
  readonly centre: Point;
  readonly run: Axis;
  /** Diameter of the cutter (disc) or of the hole; a mortise's is its width. */
  readonly diameter: Rational;
  /** Extent through the thickness. */
  readonly width: Rational;
  readonly depth: Rational;
  /** Length along the run at the surface. */
  readonly length: Bounded;
  /** Distance from the toe along the mitre face, when the surface is one. */
  readonly fromToe?: Rational | undefined;
  readonly joint: string;
  readonly source: Source;
}

/** A part as it comes out: where it is, how large, and what is cut into it. */
export interface FittedPart {
  readonly id: PartId;
  readonly kind: string;
  readonly index?: number | undefined;
  readonly attitude: Attitude;
  readonly material: string;
  readonly source: Source;
  /**
   * Where its own frame lies in the cabinet, if it is turned: box, extent, cuts, bands and sides are told in its own
   * frame. Absent: its own frame is the cabinet's. A turned part's width is a root; it is taken to the nearest
   * thousandth of a mm (`width` has it with its bound) and never flows back into another part's planes.
   */
  readonly turn?: Turn | undefined;
  /** A turned part's width before it was taken to the nearest thousandth. */
  readonly width?: Bounded | undefined;
  /** A corner cut off it. */
  readonly cant?: FittedCant | undefined;
  /** Finished box; absent while a plane of it is not fixed or contradicted, or a size comes out at less than nothing. */
  readonly box?: Box | undefined;
  /** Finished extent along each axis where it is determined. */
  readonly extent: { readonly [A in Axis]: Rational | undefined };
  /** Axis the grain runs along: as written, else the default for the attitude. */
  readonly grain: Axis;
  /** Cut size before banding: along the grain, across it, thickness; absent with the box. */
  readonly cutSize?: { readonly length: Rational; readonly width: Rational; readonly thickness: Rational } | undefined;
  readonly bands: readonly FittedBand[];
  readonly cuts: readonly Cut[];
  /** Kind number: parts with the same number are the same piece, interchangeable once made. */
  readonly same: number;
}

/** How the spacer between fence and part is made up. */
export interface Spacer {
  /** Wanted width, mm: how far the part's own datum edge lies in from zero. */
  readonly width: Rational;
  /** How far the wanted width itself varies with the input facts. */
  readonly tolerance: Tolerance;
  /**
   * `none`: no setback. `stock`: `stack` makes it up. `cut`: a block made to measure. `missing`: the shop's
   * stock cannot make it. `mark out`: the shop has no
   * jig, or the slots run along a cant, square to which the part has no edge to hold against a fence.
   */
  readonly kind: 'none' | 'stock' | 'cut' | 'missing' | 'mark out';
  /** Stock pieces, widest first; for `missing` the nearest that can be made. */
  readonly stack: readonly Rational[];
  /** Stack minus wanted width. */
  readonly off: Rational;
}

/** One slot, mortise or hole of one half of a joint. */
export interface Slot {
  /** `<joint id> <part id> <n>`, n counting from the datum. */
  readonly id: string;
  readonly part: PartId;
  readonly joint: string;
  readonly number: number;
  /** Distance of its line from zero, mm. */
  readonly fromZero: Rational;
  /** Distance of its middle from the part's own datum edge, mm. */
  readonly fromDatum: Rational;
  /** Distance of its middle from `half.from`, mm: a reference face, an end, or the toe of a mitre. */
  readonly fromReference: Rational;
  /** Middle of its mouth in the cabinet frame (mitre: on the toe line). */
  readonly centre: Point;
  /** Length along the run at the surface. */
  readonly length: Bounded;
}

/** One half of a joint: what is milled into one part. */
export interface Half {
  readonly part: PartId;
  /**
   * Present where the sides named here are those of the turned part it meets, as if this part were turned with it: on
   * this part they are the cant and its ends.
   */
  readonly turn?: Turn | undefined;
  readonly surface: Side;
  readonly role: 'edge' | 'face' | 'mitre';
  /** Of a mitre half: the side the toe lies on, and how far off square the end is sawn, degrees (a double; 45 at a square corner). */
  readonly mitre?: { readonly outer: Side; readonly angle: number } | undefined;
  readonly datum: Side;
  /** The part's own datum edge's distance in from zero, mm, ≥ 0. */
  readonly setback: Rational;
  readonly spacer: Spacer;
  /**
   * Where the slots are measured from across the joint: a reference face of an edge half, an end (or edge) of
   * the part for a face half, the toe or heel of a mitre face.
   */
  readonly from: { readonly kind: 'face' | 'end' | 'toe' | 'heel'; readonly side: Side };
  /** Distance of the slots' middle from `from`, mm. */
  readonly across: Rational;
  /** The stop for a face half: the reference plane's distance from the end it is measured from, mm. */
  readonly stop?: { readonly end: Side; readonly at: Rational; readonly block?: StopBlock | undefined } | undefined;
  /** Thickness of the block that keeps a clamping beam level; absent when the shop's jig needs none. */
  readonly packer?: Rational | undefined;
  /** The fence the datum edge goes to, with the piece held as the shop's pose says. */
  readonly hand: 'left' | 'right';
  readonly depth: Rational;
  readonly slots: readonly Slot[];
}

/** In a plan: what lies between the stop and a piece's end, so that the stop stands further off by its width. */
export interface StopBlock {
  /** mm, > 0. */
  readonly width: Rational;
  /** A part of the cabinet that is as thick: an offcut of its sheet makes the block, however thick that came out. */
  readonly like?: FittedPart | undefined;
}

/** A line of the joint's layout and what became of it. */
export interface Line {
  readonly fromZero: Rational;
  readonly use: 'used' | 'outside contact' | 'skipped' | 'left out';
}

/** What keeps a joint from being worked out; a check of its own reports each. */
export type Trouble =
  /** No fact of the joint fixes one face of the edge part, or both are fixed, and no reference is written. */
  | 'reference missing'
  /** The reference written is not a face of the edge part. */
  | 'reference not a face'
  /** The datum is not perpendicular to the run. */
  | 'datum off the run'
  /** A part's datum edge lies outside the datum written. */
  | 'datum inside'
  /** Two faces meet and connectors are asked for. */
  | 'faces meet'
  /** Two edges of parts that stand differently meet and connectors are asked for. */
  | 'edges cross'
  /** The touching sides do not overlap. */
  | 'no contact'
  /** The joint names no connectors, and neither does the cabinet. */
  | 'no connectors'
  /** A mitre whose parts differ in thickness. */
  | 'mitre unequal';

/** Where two parts meet. */
export interface FittedJoint {
  /** `<entering> / <host>`, with " (2)" and so on when they meet more than once. */
  readonly id: string;
  readonly statement: string;
  readonly source: Source;
  readonly verb: Verb;
  readonly entering: PartId;
  readonly host: PartId;
  readonly enteringSide: Side;
  readonly hostSide: Side;
  /** Axis perpendicular to the contact (of the square-cut parts; for a mitre, the entering part's). */
  readonly axis: Axis;
  readonly meeting: 'edge to face' | 'edge to edge' | 'face to face' | 'mitre';
  /** Of a mitre: the side of each part that the toe lies on, and how far off square both ends are sawn, degrees. */
  readonly mitre?: { readonly entering: Side; readonly host: Side; readonly angle: number } | undefined;
  /** Where a turned part takes part: the frame in which sides, axes and coordinates of the joint are told. */
  readonly turn?: Turn | undefined;
  /** Axis the slots are strung along; absent face to face. */
  readonly run?: Axis | undefined;
  /** Overlap of the two touching sides along the run, as coordinates; absent when sizes are not fixed or nothing overlaps. */
  readonly contact?: { readonly lo: Rational; readonly hi: Rational } | undefined;
  readonly connector?: Connector | undefined;
  readonly machine?: Machine | undefined;
  /** Name of the pattern, when it has one. */
  readonly pattern?: string | undefined;
  /** Why no connectors, when the spec says so. */
  readonly without?: string | undefined;
  /** The face of the edge part(s) the slots are measured from; `outer` and `inner` are resolved to sides. */
  readonly reference?: Side | undefined;
  readonly datum?: Side | undefined;
  /** Coordinate of zero along the run. */
  readonly zero?: Rational | undefined;
  readonly lines: readonly Line[];
  /** Entering part's half first; empty when nothing is milled. */
  readonly halves: readonly Half[];
  readonly trouble: readonly Trouble[];
}

/** What was found for one cabinet. Plain data: no functions, no text positions but `Source`. */
export interface Fit {
  readonly name: string;
  readonly source: Source;
  readonly parameters: readonly ParameterValue[];
  readonly thickness: 'nominal' | 'measured';
  /** Whether slots are milled before the bands go on. */
  readonly milled: 'before banding' | 'after banding';
  /** Outside size over all parts; absent while not fixed. */
  readonly outside?: { readonly x: Rational; readonly y: Rational; readonly z: Rational } | undefined;
  readonly parts: readonly FittedPart[];
  readonly joints: readonly FittedJoint[];
}

/** A fit with its findings, and the reasons of its sizes worked out on demand. */
export interface FitResult {
  readonly spec: Spec;
  readonly fit: Fit;
  readonly findings: readonly Finding[];
  /** Findings a silence took away, with the silence's place; for listing and for unused silences. */
  readonly silenced: readonly Finding[];
  /** Why a part's extent along an axis is what it is; empty when it is not determined. */
  reasons(part: PartId, axis: Axis): readonly Reason[];
  /** Why a part's plane lies where it does, from the cabinet's origin. */
  place(part: PartId, side: Side): readonly Reason[];
  /** What may be off at a joint, by its id, with what it adds up from. */
  errors(joint: string): readonly JointError[];
}
