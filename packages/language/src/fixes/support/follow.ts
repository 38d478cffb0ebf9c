/** The same reason for several checks. */
export const because = (why: string, ...codes: readonly string[]): Readonly<Record<string, string>> =>
  Object.fromEntries(codes.map((code) => [code, why]));

/** Checks of what is milled, as far as they need sizes and places first. */
export const MILLING = [
  'slot-near-edge',
  'slots-collide',
  'spacer-absurd',
  'spacer-alias',
  'spacer-not-in-stock',
  'ends-differ',
  'stop-not-on-step',
  'stop-out-of-range',
  'joint-can-rotate',
  'thin-wall',
  'pair-too-short',
  'no-connector-lands',
  'fence-out-of-reach',
  'slot-breaks-through',
  'flush-not-reference',
  'wrong-face-hides',
  'handed',
  'lines-mistaken',
] as const;

/** Checks of parts by their sizes. */
export const SIZES = [
  'groove-shows',
  'look-alike',
  'shelf-proud',
  'grain-across',
  'never-measured',
  'banded-datum',
] as const;

/** What is named in one place less may be named nowhere any more. */
export const UNUSED = because('what the joint took before may have no other use in the file', 'never-used');

/** What could not be looked at while a part had no size or place. */
export const ONCE_FIXED = because(
  'nothing is milled or compared until the part has its size and place',
  ...MILLING,
  ...SIZES,
  'reference-missing',
  'no-connectors',
  'mitre-no-room',
  'sheet-too-short',
  'too-big-for-jig',
);
