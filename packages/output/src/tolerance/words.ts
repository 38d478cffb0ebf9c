import type { About, Figures, LengthFormat, Result } from '@dryfit/engine';
import { toldOff } from '@dryfit/engine';
import { printLength } from '../print/length.js';

/** What a result is, without its joint: "step at the top". */
export function resultWords(about: About, format: LengthFormat): string {
  switch (about.kind) {
    case 'step':
      return `step at the ${about.side}`;
    case 'flush':
      return `flush at the ${about.side}`;
    case 'place':
      return `place of the ${about.side}`;
    case 'gap':
      return 'opening of the joint';
    case 'mitre opening':
      return 'opening at the heel (less than nothing: at the toe)';
    case 'toes':
      return 'toes, along the mitre';
    case 'heels':
      return 'heels, along the mitre';
    case 'outside': {
      const { axis, length, through } = about.distance;
      const name = { x: 'width', y: 'depth', z: 'height' }[axis];
      return `outside ${name} ${printLength(length, format)}, over ${through.join(', ')}`;
    }
    case 'opening': {
      const { from, to, length, through } = about.distance;
      const by = through.filter((part) => part !== from.part && part !== to.part);
      return `opening ${printLength(length, format)} from ${from.part} to ${to.part}${by.length > 0 ? `, by ${by.join(', ')}` : ''}`;
    }
    case 'span': {
      const { part, level, length, between, through } = about.span;
      const ends = between
        ? `${between[0]} to ${between[1]}, over ${through.join(', ')}`
        : `end to end of ${level}.cant`;
      return `span ${printLength(length, format)} of ${part}, from ${ends}`;
    }
    case 'diagonals': {
      const { left, right, base, top } = about.squareness.parts;
      return `difference of the diagonals of ${left}, ${right}, ${base}, ${top}`;
    }
  }
}

/** `± 0.06, at the worst −0.1 to 0.1`. */
export function figuresWords({ rootSumSquare, worst }: Figures, { units }: LengthFormat): string {
  const told = (length: Parameters<typeof toldOff>[0]) => toldOff(length, units);
  const [middle, least, most] = [told(rootSumSquare.middle), told(worst.least), told(worst.most)];
  const around = middle === told(ZERO) ? '' : `${middle} `;
  const half = told(rootSumSquare.half);
  if ([middle, least, most, half].every((figure) => figure === told(ZERO))) return 'nothing';
  const even = least === `−${most}` || (least === most && most === told(ZERO));
  return `${around}± ${half}, at the worst ${even ? `± ${most}` : `${least} to ${most}`}`;
}

const ZERO = { value: 0, error: 0 };

/** Results of a joint are told under it, the others under the cabinet. */
export const jointOf = (result: Result) => ('joint' in result.about ? result.about.joint : undefined);
