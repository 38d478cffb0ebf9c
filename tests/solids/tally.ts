import type { Outcome } from './compare.js';
import type { Kind } from './measure.js';

export const KINDS: readonly Kind[] = [
  'slots-collide',
  'pair-too-short',
  'slot-near-edge',
  'thin-wall',
  'slot-breaks-through',
  'mitre-no-room',
  'parts-overlap',
  'connector-binds',
];

/** What a run has come to so far; plain data, so that a run can be kept and taken up again. */
export interface Tally {
  cases: number;
  /** Cases in which some measure lay within half a millimetre of its limit. */
  near: number;
  /** Verdicts that differ where the true measure is within 0.02 mm of its limit. */
  open: number;
  /** Assemblies in which each kind was found, and in which it was looked for and not found. */
  readonly found: Record<Kind, number>;
  readonly notFound: Record<Kind, number>;
  /** Largest distance of a mesh's chord from its arc, mm. */
  chordError: number;
  readonly faults: string[];
}

const none = (): Record<Kind, number> => Object.fromEntries(KINDS.map((kind) => [kind, 0])) as Record<Kind, number>;

export const emptyTally = (): Tally => ({
  cases: 0,
  near: 0,
  open: 0,
  found: none(),
  notFound: none(),
  chordError: 0,
  faults: [],
});

export function count(tally: Tally, { kinds, near, open, faults }: Outcome, chordError: number): void {
  tally.cases += 1;
  if (near) tally.near += 1;
  tally.open += open;
  tally.chordError = Math.max(tally.chordError, chordError);
  for (const [kind, found] of kinds) (found ? tally.found : tally.notFound)[kind] += 1;
  tally.faults.push(...faults);
}
