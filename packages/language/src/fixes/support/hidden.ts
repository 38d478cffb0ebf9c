import { checkCodes } from '@dryfit/engine';

/** What may be found once a statement can be read that could not: it counts now, and the cabinet is worked out with it. */
export const hiddenUntilRead = (why: string): Readonly<Record<string, string>> =>
  Object.fromEntries(checkCodes.map((code) => [code, why]));

export const READ = 'what could not be read counts now, and may ask for what the rest does not allow';
