import type { Quantity } from '../number/quantity.js';
import type { Rational } from '../number/rational.js';
import type { Input } from './input.js';
import type { Attitude, Dimension, Side } from './sides.js';
import type { Source } from './source.js';
import type { Layout, Shop } from './stock.js';

/** A length written in a spec: exact, with its dependence on input facts, and its place. */
export interface Written extends Quantity {
  readonly source: Source;
  /** As written, white space folded: "wide - 2 * 40", "3/4\"". */
  readonly text: string;
}

/** Id of a part: its name, or name and number for like parts ("shelf", "lshelf 2"). */
export type PartId = string;

/** One piece to be made. `kind` is the written name, `index` its number among like parts. */
export interface PartSpec {
  readonly id: PartId;
  readonly kind: string;
  readonly index?: number | undefined;
  readonly attitude: Attitude;
  /** Name of a material in the shop. */
  readonly material: string;
  /** The extent the grain runs along, when written. */
  readonly grain?: Dimension | undefined;
  /** The level part whose cant it stands along: it is turned, and spans from one end of the cant to the other. */
  readonly on?: { readonly part: PartId; readonly source: Source } | undefined;
  readonly source: Source;
}

/**
 * A plane of a part: one of its six sides, a wall of the groove it sits in, a wall of its notch, or its cant (`plane` is
 * then the first side of the corner and of no account).
 */
export interface PlaneRef {
  readonly part: PartId;
  readonly plane: Side;
  readonly of: 'part' | 'groove' | 'notch' | 'cant';
  readonly source: Source;
}

export type Toward = 'above' | 'below' | 'in front of' | 'behind' | 'left of' | 'right of';

/** A placing fact about the entering part(s) of a joint, or about any part outside one. */
export type Fact =
  /** Each named side in one plane with the same side of every host. */
  | { readonly kind: 'flush'; readonly sides: readonly Side[]; readonly source: Source }
  /** `side` in one plane with `plane` (same side of a part, or a named plane). */
  | { readonly kind: 'flush with'; readonly side: Side; readonly plane: PlaneRef; readonly source: Source }
  /** `side` inside `plane` by `by`: side = plane − by·outward(side). */
  | {
      readonly kind: 'set back';
      readonly side: Side;
      readonly by: Written;
      readonly plane: PlaneRef;
      readonly source: Source;
    }
  /** `side` outside `plane` by `by`. */
  | {
      readonly kind: 'proud';
      readonly side: Side;
      readonly by: Written;
      readonly plane: PlaneRef;
      readonly source: Source;
    }
  /** `side` touching `plane`, which looks the other way. */
  | { readonly kind: 'against'; readonly side: Side; readonly plane: PlaneRef; readonly source: Source }
  /** `side` at a distance from `plane`; one distance per entering part, or one for all. */
  | {
      readonly kind: 'at';
      readonly side: Side;
      readonly by: readonly Written[];
      readonly toward: Toward;
      readonly plane: PlaneRef;
      readonly source: Source;
    }
  /** Midway between two parts' facing sides. */
  | { readonly kind: 'centred'; readonly low: PartId; readonly high: PartId; readonly source: Source }
  /** The entering parts, in order, with equal clear openings; `step` rounds all but the last down. */
  | {
      readonly kind: 'openings';
      readonly step?: Written | undefined;
      readonly low: PlaneRef;
      readonly high: PlaneRef;
      readonly source: Source;
    };

export type Verb = 'butt' | 'mitre' | 'groove' | 'rebate' | 'house' | 'rest';

/** A host named in a joint; `side` when the spec names it (edge to edge). */
export interface End {
  readonly part: PartId;
  readonly side?: Side | undefined;
  readonly source: Source;
}

/** `low` and `high` as written: between low and high, the low one standing left, in front or below. */
export interface HostPair {
  readonly low: End;
  readonly high: End;
}

export type Connect =
  | { readonly kind: 'none'; readonly reason: string; readonly source: Source }
  | {
      readonly kind: 'by';
      /** Name of a connector in the shop. */
      readonly connector: string;
      /** Name of a pattern in the shop, or lines written in place. */
      readonly pattern: string | Layout;
      readonly source: Source;
    };

export type Across =
  | { readonly kind: 'at'; readonly distance: Written; readonly source: Source }
  | { readonly kind: 'centred'; readonly source: Source };

/** Silences one check at the statement that carries it. */
export interface Silence {
  readonly check: string;
  readonly reason: string;
  readonly source: Source;
}

interface StatementBase {
  /** Stable id, unique in a cabinet, independent of order: "butt shelf between lh and rh"; repeated ones get " (2)". */
  readonly id: string;
  readonly source: Source;
  readonly silences: readonly Silence[];
}

/** A dimension line. */
export interface DimensionStatement extends StatementBase {
  readonly kind: 'dimension';
  readonly dimension: Dimension;
  readonly length: Written;
  readonly form: /** From the low side of `low` to the high side of `high`. */
    | { readonly kind: 'over'; readonly low: PartId; readonly high: PartId }
    /** From the high side of `low` to the low side of `high`. */
    | { readonly kind: 'between'; readonly low: PartId; readonly high: PartId }
    /** Each part's own extent. */
    | { readonly kind: 'of'; readonly parts: readonly PartId[] }
    | { readonly kind: 'from'; readonly from: PlaneRef; readonly to: PlaneRef };
}

export interface JointStatement extends StatementBase {
  readonly kind: 'joint';
  readonly verb: Verb;
  /** The parts that enter: one, or all like parts of a name. */
  readonly entering: readonly PartId[];
  readonly enteringSource: Source;
  /** Pairs the parts stand between. */
  readonly between: readonly HostPair[];
  /** Single planes the parts meet. */
  readonly to: readonly PlaneRef[];
  readonly facts: readonly Fact[];
  readonly connect?: Connect | undefined;
  readonly datum?: { readonly side: Side; readonly plane?: PlaneRef | undefined; readonly source: Source } | undefined;
  readonly reference?: { readonly side: Side | 'outer' | 'inner'; readonly source: Source } | undefined;
  readonly across?: Across | undefined;
  /** How deep the entering part goes in (groove, house), or how far a rebate laps. */
  readonly depth?: Written | undefined;
  readonly lap?: Written | undefined;
  /** Width of the groove. */
  readonly width?: Written | undefined;
  /** Room left at the bottom of a groove or housing, or at each end of a resting part. */
  readonly clearance?: Written | undefined;
  /** How far a groove stops short of the end of its host. */
  readonly stopped?: Written | undefined;
  readonly spacerCut?: { readonly source: Source } | undefined;
  /** Lines to leave out, as distances from zero. */
  readonly leaveOut: readonly Written[];
  /** The outer side of a mitred corner. */
  readonly outer?: { readonly side: Side; readonly source: Source } | undefined;
}

/** A fact about parts, outside any joint. */
export interface PlacingStatement extends StatementBase {
  readonly kind: 'placing';
  readonly parts: readonly PartId[];
  readonly fact: Fact;
}

/** A block cut away at a corner where two sides meet: `legs` gives its extent inward from each. */
export interface NotchStatement extends StatementBase {
  readonly kind: 'notch';
  readonly parts: readonly PartId[];
  readonly corner: readonly [Side, Side];
  readonly legs: readonly { readonly dimension: Dimension; readonly length: Written }[];
}

/** A corner where two edges meet cut straight off: `legs` gives how much of the part is gone along each extent. */
export interface CantStatement extends StatementBase {
  readonly kind: 'cant';
  readonly parts: readonly PartId[];
  readonly corner: readonly [Side, Side];
  readonly legs: readonly { readonly dimension: Dimension; readonly length: Written }[];
}

/** Edge band on sides of parts: the named planes are finished planes, cut sizes are less by the band. */
export interface BandStatement extends StatementBase {
  readonly kind: 'band';
  readonly sides: readonly Side[];
  readonly parts: readonly PartId[];
  /** Name of a band in the shop. */
  readonly band: string;
}

/** What parts carry, each of them. */
export interface LoadStatement extends StatementBase {
  readonly kind: 'load';
  readonly parts: readonly PartId[];
  /** Above zero: kg on the part, kg on each metre of its span, or kg on each square metre. */
  readonly mass: { readonly amount: Rational; readonly per: 'part' | 'metre' | 'square metre' };
  /** As written: "25 kg", "20 lb/ft". */
  readonly text: string;
  /** Spread evenly, or all of it at the middle of the span (a load on the part only). */
  readonly lies: 'spread' | 'middle';
  /** Ends that are free to turn where they rest, or held so that they cannot. */
  readonly ends: 'resting' | 'fixed';
}

/** Moisture of solid wood, percent: as it is worked, and between what it will swing where the cabinet stands. */
export interface MoistureStatement extends StatementBase {
  readonly kind: 'moisture';
  readonly made: Rational;
  readonly least: Rational;
  readonly most: Rational;
}

export type Statement =
  | DimensionStatement
  | JointStatement
  | PlacingStatement
  | NotchStatement
  | CantStatement
  | BandStatement
  | LoadStatement
  | MoistureStatement;

/** A parameter with the value it has here. */
export interface ParameterValue {
  readonly name: string;
  readonly value: Rational;
  readonly count: boolean;
  readonly overridden: boolean;
  readonly source: Source;
}

/** One cabinet with its parameters settled: everything the engine needs, and nothing it must look up. */
export interface Spec {
  /** Name of the cabinet. */
  readonly name: string;
  readonly source: Source;
  /** Place of the name itself, where findings about the whole cabinet go. */
  readonly nameSource: Source;
  readonly parameters: readonly ParameterValue[];
  readonly inputs: readonly Input[];
  readonly parts: readonly PartSpec[];
  readonly statements: readonly Statement[];
  /** Used by every joint that names no other. */
  readonly connect?: Connect | undefined;
  readonly datum?: { readonly side: Side; readonly source: Source } | undefined;
  /** When the edges are milled: after banding unless said; `source` is absent when it was not said. */
  readonly milled: { readonly when: 'before banding' | 'after banding'; readonly source?: Source | undefined };
  readonly silences: readonly Silence[];
  readonly shop: Shop;
  /** Which thickness the sizes are worked from. */
  readonly thickness: 'nominal' | 'measured';
}
