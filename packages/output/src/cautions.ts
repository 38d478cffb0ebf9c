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
