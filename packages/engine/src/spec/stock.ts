import type { Rational } from '../number/rational.js';
import type { Toleranced } from './input.js';
import type { Source } from './source.js';

/** What every entry of a shop file has: its name, its place, and where a library value comes from. */
export interface Stock {
  readonly name: string;
  readonly source: Source;
  /** Where the figures come from, for entries of the built-in library ("from memory" where they do). */
  readonly provenance?: string | undefined;
}

export interface Material extends Stock {
  /** Thickness by which the sheet is sold, mm. For a layered material the sum of its layers. */
  readonly thickness: Toleranced;
  /** Thickness as measured on this batch, mm. */
  readonly measured?: Toleranced | undefined;
  /** Sheet size, mm; `grain` tells which of the two the grain runs along. */
  readonly sheet?: { readonly length: Rational; readonly width: Rational } | undefined;
  readonly grain?: 'length' | 'width' | undefined;
  /** Names of the materials glued up into this one, outside to outside. */
  readonly layers?: readonly string[] | undefined;
  /** How much larger than finished each layer is cut, mm. */
  readonly oversize?: Rational | undefined;
  /** Modulus of elasticity in bending, GPa: along the grain where the material has one. */
  readonly stiffness?: Rational | undefined;
  /** The same across the grain, GPa. */
  readonly stiffnessAcross?: Rational | undefined;
  /** How much more it sags in time under a load that stays, in parts of what it sags at first: 0.8 for plywood. */
  readonly creep?: Rational | undefined;
  /** Solid wood: by what part of its width it moves across the grain for each percent of moisture. */
  readonly movement?: Rational | undefined;
  /** kg per cubic metre. */
  readonly density?: Rational | undefined;
}

/** A size that something is sold in. */
export interface Pack {
  /** Above 0: pieces, mm of a roll, grams. */
  readonly size: Rational;
  /** As written: "100", "50 m", "5 kg". */
  readonly text: string;
}

/** How something that is used up is bought. */
export interface Sold {
  /** Each of another size; absent where the shop does not say. */
  readonly packs?: readonly Pack[] | undefined;
  /** How much more is bought for what is spoilt, in parts of what is needed; the language's own figure when absent. */
  readonly spare?: Rational | undefined;
}

export interface Band extends Stock, Sold {
  readonly thickness: Toleranced;
  /** How much longer than its edge each piece is cut, mm, to be trimmed. */
  readonly oversize?: Rational | undefined;
}

/** `disc`: a circular cutter plunged edge-on (diameter, kerf); `mortiser`: a bit swung sideways; `drill`: a bit only plunged. */
export type MachineKind = 'disc' | 'mortiser' | 'drill';

export interface Machine extends Stock {
  readonly kind: MachineKind;
  /** Diameter of cutter or bit, mm. */
  readonly diameter: Rational;
  /** Width of the slot across, mm: the disc's kerf, or the bit's diameter. */
  readonly kerf: Rational;
  /** From the machine's base to the middle of the slot, mm: one value, or the range it can be set to. */
  readonly base: {
    readonly least: Rational;
    readonly most: Rational;
    readonly plus?: Rational | undefined;
    readonly minus?: Rational | undefined;
  };
  /** Width of the machine's body along the fence, mm. */
  readonly body?: Rational | undefined;
}

export type ConnectorShape = 'biscuit' | 'loose tenon' | 'dowel';

export interface Connector extends Stock, Sold {
  readonly shape: ConnectorShape;
  /** Extent along the run, mm (a dowel's is its diameter). */
  readonly along: Rational;
  /** Extent across the joint, mm: a biscuit's width; a tenon's or dowel's length. */
  readonly across: Rational;
  /** Extent through the part's thickness, mm (a dowel's is its diameter). */
  readonly thickness: Rational;
  /** Length of the mortise along the run, mm; a disc's follows from its chord. */
  readonly slot?: Rational | undefined;
  readonly plunge: { readonly face: Rational; readonly edge: Rational };
  /** Room for glue beyond the connector, both halves together, mm. */
  readonly clearance?: Rational | undefined;
  /** Name of the machine that cuts for it. */
  readonly machine: string;
}

/** Where along a run the connectors go. */
export type Layout =
  /** Distances of the lines from zero, mm; a line nearer than `skip` to an end of the contact is left out. */
  | { readonly kind: 'lines'; readonly lines: readonly Rational[]; readonly skip?: Rational | undefined }
  /**
   * `first` and `last` from the ends of the contact, mm. `most` asks for the fewest equal intervals not
   * longer than it; `pitch` for fixed steps that stop short of `last`; neither for two lines.
   */
  | {
      readonly kind: 'spread';
      readonly first: Rational;
      readonly last: Rational;
      readonly most?: Rational | undefined;
      readonly pitch?: Rational | undefined;
    };

export interface Pattern extends Stock {
  readonly layout: Layout;
}

/** What a shop's jig offers. Every property that is absent is not offered. */
export interface Jig extends Stock {
  /** Length of the bed along the fence direction, mm. */
  readonly bed?: Rational | undefined;
  /** Ends of the bed that register a datum edge. */
  readonly fences: readonly ('left' | 'right')[];
  /** From a fence to the last line the machine reaches, mm; the bed when absent. */
  readonly reach?: Rational | undefined;
  readonly stop?:
    | { readonly least: Rational; readonly most: Rational; readonly step?: Rational | undefined }
    | undefined;
  /** Spacers owned, mm; one entry a piece, so two alike are two entries. */
  readonly spacers: readonly Rational[];
  /** How far a stack may be off the wanted width, mm. */
  readonly within?: Rational | undefined;
  /** `beam`: one beam across the bed, which needs a packer when a single piece lies under it. */
  readonly hold?: 'beam' | 'clamps' | undefined;
}

/** How this shop holds a piece: which way its reference looks. */
export interface Pose {
  readonly edge: 'down' | 'up';
  readonly face: 'down' | 'up';
  /** Slots that may as well be milled with the reference the other way. */
  readonly either?: readonly ('edge' | 'face')[] | undefined;
  readonly source?: Source | undefined;
}

/** Least material and other allowances, mm. */
export interface Limits {
  readonly source?: Source | undefined;
  /** Least material between the end of a slot and an edge, along the run. */
  readonly slotToEdge: Rational;
  /** Least material beside a slot in an edge. */
  readonly wall: Rational;
  /** Least material under the bottom of a slot. */
  readonly skin: Rational;
  /** Largest step between two surfaces that is let pass. */
  readonly step: Rational;
  /** Parts nearer in size than this are taken for look-alikes. */
  readonly alike: Rational;
  /** How much a loaded shelf may sag at first, in parts of its span. */
  readonly sag: Rational;
  /** How much it may sag at first at most, whatever its span. */
  readonly sagAtMost?: Rational | undefined;
  /** How much it may sag in time, in parts of its span. */
  readonly sagInTime?: Rational | undefined;
  /** Largest opening along a joint that is let pass. */
  readonly gap: Rational;
  /** How much two glued parts may move against each other along their joint as their moisture swings. */
  readonly movement: Rational;
  /** How long glue that has been spread may wait until its joint is closed, minutes. */
  readonly glueOpen?: Rational | undefined;
  /** How long it takes to spread glue on a joint, put it together and clamp it, minutes. */
  readonly jointTime?: Rational | undefined;
  /** Which of these were written by the shop; the rest are the language's defaults. */
  readonly written: readonly string[];
}

/**
 * How far off things come at this bench, mm unless said. What is absent counts as nothing: no finding rests on a figure
 * that the shop has not written.
 */
export interface Tolerances {
  readonly source: Source;
  /** Each size the saw cuts, and each leg of a cant. */
  readonly saw?: Toleranced | undefined;
  /** How far a cut end may be out of square, `by` over a length. */
  readonly square?: { readonly by: Rational; readonly over: Rational; readonly source: Source } | undefined;
  /** The bevel of a mitre, either way, degrees. */
  readonly mitre?: { readonly degrees: Rational; readonly source: Source } | undefined;
  /** Grooves, rebates and housings: where they lie, and how deep they are. */
  readonly cuts?: Toleranced | undefined;
  /** A fence from the zero of the lines. */
  readonly fence?: Toleranced | undefined;
  /** Each spacer of a stack, or a block made to measure. */
  readonly spacer?: Toleranced | undefined;
  /** A stop as it is set. */
  readonly stop?: Toleranced | undefined;
  /** A line as it is read by eye. */
  readonly line?: Toleranced | undefined;
  /** How far a cupped panel that is not held flat may lie off the bed; one way only. */
  readonly cup?: { readonly most: Rational; readonly source: Source } | undefined;
  /** How far dirt may hold a piece off a fence, a stop or the bed; one way only. */
  readonly dirt?: { readonly most: Rational; readonly source: Source } | undefined;
  /** How errors are added up where a check compares them with a limit. */
  readonly reckon: 'worst case' | 'root sum square';
}

/** What it takes at this bench to change a setting, and to mill, minutes. */
export interface Changes {
  readonly source?: Source | undefined;
  readonly machine: Rational;
  readonly depth: Rational;
  /** From the machine's base to the middle of its slot. */
  readonly base: Rational;
  /** Another kind of surface, or held the other way up. */
  readonly pose: Rational;
  readonly pattern: Rational;
  readonly spacer: Rational;
  readonly stop: Rational;
  /** Laying a piece down, or two beside each other, and taking it off. */
  readonly load: Rational;
  /** One slot. */
  readonly slot: Rational;
  /** Which of these were written by the shop; the rest are the language's defaults. */
  readonly written: readonly string[];
}

export interface Glue extends Stock, Sold {
  /** Grams on a square metre of a glue line, both of its faces together. */
  readonly spread: Rational;
}

/** Everything a cabinet draws on; only what is reachable from its file. */
export interface Shop {
  readonly materials: ReadonlyMap<string, Material>;
  readonly bands: ReadonlyMap<string, Band>;
  readonly machines: ReadonlyMap<string, Machine>;
  readonly connectors: ReadonlyMap<string, Connector>;
  readonly patterns: ReadonlyMap<string, Pattern>;
  readonly jig?: Jig | undefined;
  readonly pose: Pose;
  readonly limits: Limits;
  readonly tolerances?: Tolerances | undefined;
  readonly changes?: Changes | undefined;
  readonly glue?: Glue | undefined;
}
