import { formatMm, INCH, type LengthFormat, type Rational } from '@dryfit/engine';

/** A measured or reckoned figure: thousandths of a millimetre, ten-thousandths of an inch, since a fraction is too coarse. */
export function measured(length: Rational, { units }: LengthFormat): string {
  const { text, lost } =
    units === 'mm' ? formatMm(length, { decimals: 3 }) : formatMm(length.div(INCH), { decimals: 4 });
  return `${lost.isZero() ? '' : '≈'}${text.replace('-', '−')}${units === 'mm' ? '' : '"'}`;
}
