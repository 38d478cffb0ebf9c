import type { FitResult, Shop } from '@dryfit/engine';
import {
  type Cabinet,
  type CantLine,
  type Entry,
  type Fact,
  type File,
  isCabinet,
  isCantLine,
  isJoint,
  isNotchLine,
  type Joint,
  type NotchLine,
} from '../generated/ast.js';
import type { Named } from '../scope/names.js';
import { axesOf, type JointAxes } from './axes.js';
import type { Opened } from './context.js';
import { type Head, readHead } from './head.js';
import { type Standing, standingsOf } from './standing.js';

/** What completion asks of the rest of the language; nothing here is worked out for it. */
export interface Around {
  /** Everything of a type that a file sees, by name. */
  names(file: File, type: string): ReadonlyMap<string, Named>;
  shop(file: File): Shop;
  /** What was last found for a cabinet, be it of an earlier text. */
  found(cabinet: Cabinet): FitResult | undefined;
  /** The facts of the joint that begins at an offset, but for one that is being written at another. */
  facts(joint: number, cursor: number): readonly Fact[];
  /** What an `import` in this file may name, as paths from it. */
  imports(): readonly string[];
}

/** The place where something is to be written, in the trade's terms. */
export interface Situation {
  readonly file: File;
  /** The word that the cursor stands in, to its end. */
  readonly under: string;
  /** Words before the brace of the innermost open block. */
  readonly opened: readonly string[];
  /** Words written in the innermost open block since its last line that opens a statement. */
  readonly begun: readonly string[];
  /** The last of them with blanks between, for patterns. */
  readonly tail: string;
  /** Offset of the first of them, or of the cursor. */
  readonly start: number;
  readonly offset: number;
  /** The entry of the file whose braces are open. */
  readonly entry?: Entry | undefined;
  readonly cabinet?: Cabinet | undefined;
  readonly parts: ReadonlyMap<string, Standing>;
  /** The joint whose braces are open, as far as its text can be read. */
  readonly joint?: Joint | undefined;
  /** The notch or cant whose braces are open. */
  readonly notch?: NotchLine | CantLine | undefined;
  /** What the braces of that joint say beside the fact that is being written. */
  readonly facts: readonly Fact[];
  /** The head of the joint whose braces are open, or which is being written. */
  readonly head?: Head | undefined;
  readonly axes?: JointAxes | undefined;
  /** True in the braces of a joint. */
  readonly inJoint: boolean;
  readonly around: Around;
}

export function situationOf(file: File, opened: Opened, offset: number, under: string, around: Around): Situation {
  const { blocks, begun, start } = opened;
  const [outer, inner] = blocks;
  const at = <T extends { readonly $cstNode?: { readonly offset: number } | undefined }>(
    nodes: readonly T[],
    from: number,
  ) => nodes.find((node) => node.$cstNode?.offset === from);
  const entry = outer && at(file.entries, outer.start);
  const cabinet = isCabinet(entry) ? entry : undefined;
  const item = inner && cabinet && at(cabinet.items, inner.start);
  const joint = isJoint(item) ? item : undefined;
  const head = readHead(inner?.head ?? (outer === undefined ? [] : begun));
  const parts = standingsOf(cabinet);
  const inJoint = inner !== undefined && head !== undefined;
  const facts = inJoint ? around.facts(inner.start, offset) : [];
  const toe = facts.find((fact) => fact.$type === 'OuterFact')?.side;
  return {
    file,
    under,
    opened: (inner ?? outer)?.head ?? [],
    begun,
    tail: begun.slice(-MOST).join(' '),
    start,
    offset,
    entry,
    cabinet,
    parts,
    joint,
    notch: isNotchLine(item) || isCantLine(item) ? item : undefined,
    head,
    axes: head && axesOf(head, parts, toe),
    inJoint,
    facts,
    around,
  };
}

/** Words back from the cursor that any pattern looks at. */
const MOST = 60;

/** True for a node that the cursor stands in. */
export const isAt = (
  { $cstNode: cst }: { readonly $cstNode?: { readonly offset: number; readonly end: number } | undefined },
  offset: number,
): boolean => cst !== undefined && cst.offset <= offset && offset < cst.end;
