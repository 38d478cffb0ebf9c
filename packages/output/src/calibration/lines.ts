import { formatMm, Rational, type Tolerance } from '@dryfit/engine';
import { type CalibrationReport, canBeSet, isCertain } from './report.js';

/** Finest figure that is written, mm: no calipers show less. */
const FINEST = 3;

/** A figure as a text has it, in millimetres, to a thousandth. */
export function written(length: Rational, plainIsMm: boolean): string {
  return `${formatMm(length, { decimals: FINEST }).text}${plainIsMm ? '' : ' mm'}`;
}

function tolerance({ plus, minus }: Tolerance, plainIsMm: boolean): string {
  if (plus.isZero() && minus.isZero()) return '';
  if (plus.equals(minus)) return ` ± ${written(plus, plainIsMm)}`;
  return ` plus ${written(plus, plainIsMm)} minus ${written(minus, plainIsMm)}`;
}

/**
 * The base as the shop file should have it; undefined where there is nothing to write: a base that can be set has no one
 * figure, and what is off by less than measuring is stays. Its tolerance is the one written, or what measuring leaves open
 * where that is more.
 */
export function baseLine({ machine, base, set, plainIsMm }: CalibrationReport): string | undefined {
  if (!base || canBeSet(machine) || !isCertain(base.found, set)) return undefined;
  const wide = (own: Rational | undefined) => Rational.max(own ?? Rational.ZERO, base.found.within);
  const { plus, minus } = machine.base;
  return `base to centre ${written(base.found.value, plainIsMm)}${tolerance({ plus: wide(plus), minus: wide(minus) }, plainIsMm)}`;
}

/** The width of the slots as the shop file should have it, where a disc turns out to mill another one. */
export function kerfLine({ machine, base, plainIsMm }: CalibrationReport): string | undefined {
  if (base?.from !== 'walls' || machine.kind !== 'disc' || !isCertain(base.kerf, machine.kerf)) return undefined;
  return `kerf ${written(base.kerf.value, plainIsMm)}`;
}

/** The plunge as the shop file should have it, if the machine is left as it is. */
export function plungeLine({ depth, plainIsMm }: CalibrationReport): string | undefined {
  const found = depth?.found;
  if (!depth || !found || !isCertain(found.off, Rational.ZERO)) return undefined;
  const { face, edge } = found.plunge;
  if (face.equals(edge)) return `plunge ${written(face, plainIsMm)}`;
  return `plunge ${written(face, plainIsMm)} in face, ${written(edge, plainIsMm)} in edge`;
}
