import type { FittedJoint, Rational } from '@dryfit/engine';

const NOT_USED = {
  'outside contact': 'beyond where the parts touch',
  skipped: 'too near an end, skipped as the pattern says',
  'left out': 'left out as written',
} as const;

/** Lines of a joint's pattern that get no slot, by the reason. */
export function notUsed({ lines }: FittedJoint): readonly { readonly at: readonly Rational[]; readonly why: string }[] {
  return Object.entries(NOT_USED)
    .map(([use, why]) => ({ at: lines.filter((line) => line.use === use).map((line) => line.fromZero), why }))
    .filter(({ at }) => at.length > 0);
}
