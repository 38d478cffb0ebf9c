import type { Attitude, Axis, Severity, Side, Source, Units } from '@dryfit/engine';

/**
 * What a drawing shows, as plain data that survives JSON. Figures here are for pens only: numbers in mm, rounded as
 * numbers are. Whatever a reader may take a size from is a label, printed from the exact length.
 */
export interface Scene {
  /** Name of the cabinet, unique in its file. */
  readonly cabinet: string;
  /** The same with the parameters that are not as written: "Periodicals (wide 450)". */
  readonly title: string;
  /** Units of the labels. */
  readonly units: Units;
  /** Overall size in labels; absent while not fixed. */
  readonly outside?: Triple<string> | undefined;
  readonly parts: readonly ScenePart[];
  readonly joints: readonly SceneJoint[];
  readonly findings: readonly SceneFinding[];
  /** Places inside the cabinet that findings speak of, such as where two cuts meet; absent where nobody has looked. */
  readonly marks?: readonly SceneMark[] | undefined;
  /** The order in which it is put together; absent where nobody has asked for it. */
  readonly steps?: readonly SceneStep[] | undefined;
  /** Errors found in all that this is made from, where those are not only its own. */
  readonly errors?: number | undefined;
}

/** Along x (width), y (depth), z (height). */
export type Triple<T> = readonly [x: T, y: T, z: T];

/** In the cabinet frame, or a part's own, mm. */
export interface SceneBox {
  readonly lo: Triple<number>;
  readonly hi: Triple<number>;
}

/** Something drawn that a reader can point at. */
export interface Shape {
  /** Stable while the text changes around it, unique in its scene: "part shelf 2", "slot shelf / lh lh 3". */
  readonly shape: string;
  /** What it is, in words: "shelf 2", "biscuit20 slot 3 of shelf / lh in lh". */
  readonly label: string;
  /** Every place of the text that makes it what it is; where it is given first. */
  readonly places: readonly Source[];
}

export interface ScenePart extends Shape {
  readonly part: string;
  readonly attitude: Attitude;
  readonly material: string;
  readonly grain: Axis;
  /** Number of the piece: parts with the same number are interchangeable. */
  readonly same: number;
  /** Finished box in the part's own frame; absent while not fixed, and then the part is listed but not drawn. */
  readonly box?: SceneBox | undefined;
  /** Where a turned part's own frame lies in the cabinet; of any other part it is the cabinet's. */
  readonly turn?: SceneTurn | undefined;
  /** Finished width, depth and height in labels. */
  readonly sizes: Triple<string | undefined>;
  readonly bands: readonly { readonly side: Side; readonly band: string }[];
  readonly cuts: readonly SceneCut[];
  /** Slots along its cant. */
  readonly along?: readonly SceneAlong[] | undefined;
}

/** A frame turned about the upright: its origin in plan, mm, and the unit direction of its x. */
export interface SceneTurn {
  readonly origin: readonly [x: number, y: number];
  readonly along: readonly [x: number, y: number];
}

/** A slot, mortise or hole that runs along a part's cant, for the turned part it meets there. */
export interface SceneAlong extends Shape {
  readonly kind: 'disc' | 'mortise' | 'hole';
  /** The face it opens to; absent where it opens to the cant. */
  readonly surface?: Side | undefined;
  /** Its opening in the part's own frame, mm, in order round it. */
  readonly outline: readonly Triple<number>[];
  readonly joint: string;
  readonly mate: string;
  /** In labels and words: "212.1 from the left end of the cant", "9.5 from the cant". */
  readonly connector: string;
  readonly number: number;
  readonly fromDatum: string;
  readonly datum: string;
  readonly across: string;
  readonly from: string;
  readonly depth: string;
}

/** A cut of a part; slots, mortises and holes name their joint half. */
export interface SceneCut extends Shape {
  readonly kind: 'disc' | 'mortise' | 'hole' | 'groove' | 'rebate' | 'housing' | 'notch' | 'bevel' | 'cant';
  /** Side of the part it opens to. */
  readonly surface: Side;
  /** Box it takes up in the cabinet frame, as near as a box comes; of a bevel, the material taken off. */
  readonly box: SceneBox;
  readonly run: Axis;
  /** Id of its joint, of a slot, mortise, hole or bevel; of a groove, rebate or housing its statement's. */
  readonly joint?: string | undefined;
  /** Opening of a slot, mortise or hole along its run and across it, and how deep it goes, mm. */
  readonly mouth?: { readonly length: number; readonly width: number; readonly depth: number } | undefined;
  /** Where a slot lies on a mitre: how far from the toe along the mitre face, mm. */
  readonly fromToe?: number | undefined;
  /** What a bench measures it by, in labels; of slots, mortises and holes only. */
  readonly measured?:
    | {
        readonly number: number;
        readonly connector: string;
        readonly datum: Side;
        readonly fromDatum: string;
        readonly from: { readonly kind: 'face' | 'end' | 'toe' | 'heel'; readonly side: Side };
        readonly across: string;
        readonly depth: string;
      }
    | undefined;
  /** Of a groove, rebate or housing, in labels. */
  readonly recess?:
    | {
        readonly width: string;
        readonly depth: string;
        /** Side of the part that is parallel to its walls and nearer to them, and how far in from it they lie. */
        readonly from: Side;
        readonly near: string;
        readonly far: string;
        /** Its ends that stop short of an end of the part, and how far in from there. */
        readonly stops: readonly { readonly from: Side; readonly at: string }[];
      }
    | undefined;
  /** Of a notch or cant: how far it goes in from each side of its corner, in labels. */
  readonly legs?: readonly { readonly from: Side; readonly length: string }[] | undefined;
  /** Of a bevel, and of a slot in one: the side the toe lies on. Of a cant: the other side of its corner. */
  readonly outer?: Side | undefined;
  /** Of a bevel, and of a slot in one: how far off square it is sawn, degrees; 45 if absent. */
  readonly angle?: number | undefined;
}

export interface SceneJoint extends Shape {
  readonly joint: string;
  readonly entering: string;
  readonly host: string;
  readonly enteringSide: Side;
  readonly hostSide: Side;
  /** Common box of the two parts: flat where they touch, thick where one goes into the other; absent if they do not meet. */
  readonly contact?: SceneBox | undefined;
}

/** A place that is marked on parts, with the words that go with it as its label. */
export interface SceneMark extends Shape {
  /** Parts it is marked on, and with which it moves when they are pulled apart. */
  readonly parts: readonly string[];
  /** Its two ends in the cabinet frame, mm; one place twice where it is a point. */
  readonly ends: readonly [Triple<number>, Triple<number>];
  /** What stands beside it: "2.3 left". */
  readonly words: string;
  /** Smallest box around it in the cabinet frame. */
  readonly box: SceneBox;
  readonly severity: Severity;
}

/** One step of putting a cabinet together. */
export interface SceneStep {
  /** What is done, in words. */
  readonly label: string;
  /** What goes with it, a line each: connectors, clamps. */
  readonly notes: readonly string[];
  /** Parts that are brought in, each with the way it comes: a direction in the cabinet frame, of any length. */
  readonly coming: readonly {
    readonly part: string;
    readonly along: Triple<number>;
    /** The same in words: "to the left". */
    readonly words: string;
  }[];
  /** Parts that are in their places before. */
  readonly placed: readonly string[];
}

export interface SceneFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly cure: string;
  readonly place: Source;
  /** Shapes it is about. */
  readonly shapes: readonly string[];
}
