import type {
  BaseMoves,
  Connector,
  DepthFound,
  Jig,
  Machine,
  MeasuredLength,
  Rational,
  StopMoves,
  Text,
  TurnedJoint,
  Walls,
} from '@dryfit/engine';

/** What was measured on a test joint, and what it tells of the machine. Lengths in mm. */
export interface CalibrationReport {
  readonly machine: Machine;
  /** Where the machine is described: "shop.joinery:11"; absent where its text is not at hand. */
  readonly place: string | undefined;
  /** The text is the user's own; the library's cannot be edited. */
  readonly isOwn: boolean;
  /** Plain numbers of that text are millimetres. */
  readonly plainIsMm: boolean;
  /** The base that the test was milled with: the one written, or the one that was set. */
  readonly set: Rational;
  /** How far each measured figure may be off. */
  readonly within: Rational;
  readonly base?: BaseFound | undefined;
  readonly depth?: DepthReport | undefined;
  readonly stop?: StopReport | undefined;
  /** What the corrected base does to the cabinets of the file; empty where none is corrected. */
  readonly cabinets: readonly { readonly label: Text; readonly moves: BaseMoves }[];
}

export type BaseFound = {
  readonly found: MeasuredLength;
} & (
  | { readonly from: 'joint'; readonly joint: TurnedJoint }
  | { readonly from: 'walls'; readonly walls: Walls; readonly kerf: MeasuredLength }
);

export type DepthReport = {
  readonly connector: Connector;
  /** Absent where the test joint closes: no joint tells how much deeper than needed the slots are. */
  readonly found: DepthFound | undefined;
} & (
  | { readonly from: 'gap'; readonly across: Rational; readonly gap: Rational }
  | { readonly from: 'depth'; readonly depth: Rational }
);

/** What was measured of a jig's stop, and what it does to the cabinets of the file as it stands. */
export interface StopReport {
  readonly jig: Jig;
  /** Where the jig is described; absent where its text is not at hand. */
  readonly place: string | undefined;
  /** What the stop was set to, mm. */
  readonly set: Rational;
  /** From the end to the reference face of the piece that stands, mm; absent where only the slot was measured. */
  readonly stands: Rational | undefined;
  /** From the end to the walls of the slot in the face, mm. */
  readonly walls: Walls | undefined;
  /** How far it stands from where it was set, away from the end. */
  readonly found: MeasuredLength;
  /** What the shop's tolerances let a stop be off, either way, mm; absent where they say nothing. */
  readonly held: Rational | undefined;
  readonly moved: readonly { readonly label: Text; readonly moves: StopMoves }[];
}

/** Whether a base can be set, so that there is no one figure to write. */
export const canBeSet = ({ base }: Machine): boolean => !base.least.equals(base.most);

/** What is off by no more than measuring is may be nothing at all. */
export const isCertain = ({ value, within }: MeasuredLength, wanted: Rational): boolean =>
  value.sub(wanted).abs().gt(within);
