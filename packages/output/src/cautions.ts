/**
 * What stands with every table that somebody mills from. Common workshop practice for portable machines; it
 * replaces neither the machine's manual nor local rules, and says so.
 */
export const MILLING_CAUTIONS: readonly string[] = [
  'Isolate the machine from its supply before you change the cutter or set the depth.',
  'Clamp the work; keep both hands on the machine.',
  'See that the guard returns over the cutter by itself.',
  'Run the extraction and wear a dust mask; protect eyes and ears.',
  'Cut a test slot in scrap and try a connector in it before the first part.',
  "Follow the machine's manual and local rules; they come before this sheet.",
];

/** What stands with every table that somebody saws or planes from. */
export const SAWING_CAUTIONS: readonly string[] = [
  'Isolate the machine from its supply before you change the blade or its setting.',
  'Support the whole sheet; keep the guard in place and both hands clear of the blade.',
  'Run the extraction and wear a dust mask; protect eyes and ears.',
  'Measure the first part cut before you cut the rest.',
  "Follow the machine's manual and local rules; they come before this sheet.",
];
