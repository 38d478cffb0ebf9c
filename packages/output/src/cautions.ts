/**
 * What stands with every table that somebody mills from: common workshop practice for portable machines. It
 * replaces neither the machine's manual nor local rules, and says so. Short, because it is read at a machine.
 */
export const MILLING_CAUTIONS: readonly string[] = [
  'Isolate the machine before changing the cutter or the depth.',
  'Clamp the work; keep both hands on the machine.',
  'See that the guard returns by itself.',
  'Extraction on, dust mask, eye and ear protection.',
  'Cut a test slot in scrap first.',
  "The machine's manual and local rules come before this sheet.",
];

/** What stands with every table that somebody saws from. */
export const SAWING_CAUTIONS: readonly string[] = [
  'Isolate the machine before changing the blade or its setting.',
  'Support or clamp the work; guard in place, hands clear of the blade.',
  'Extraction on, dust mask, eye and ear protection.',
  'Make a test cut in scrap and measure it first.',
  "The machine's manual and local rules come before this sheet.",
];

/** What stands with every order of a glue-up. */
export const GLUING_CAUTIONS: readonly string[] = [
  'Put it together dry first, with every clamp it will have.',
  'Lift large parts with two people; keep fingers out of joints that close.',
  'Draw clamps up evenly and no tighter than closes the joint; measure both diagonals before the glue sets.',
  'A clamped case can tip: let it lie on level bearers, and keep clear of bars that stand out.',
  'Gloves and fresh air as the maker of the glue says.',
  "The glue maker's times and local rules come before this sheet.",
];
