import { ofInput } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import type { Toleranced } from '../spec/input.js';
import { SIDES, type Side } from '../spec/sides.js';
import type { Source } from '../spec/source.js';
import type { PlaneRef, Written } from '../spec/spec.js';

/** A length as a test writes it: `22`, `'21.8'`, `'23 1/4'`, all in millimetres, or a length made before. */
export type Length = number | string | Written;

export function mm(numeral: number | string): Rational {
  const value = Rational.parse(String(numeral));
  if (value === undefined) throw new Error(`${numeral} is no length`);
  return value;
}

/** A length with a tolerance: `'17.7 ± 0.2'`, `'18 plus 0.7 minus 0.9'`. */
export function toleranced(text: number | string): Toleranced {
  const [numeral = '', first, second] = String(text).split(/\s*±\s*|\s+plus\s+|\s+minus\s+/);
  const value = mm(numeral);
  return first === undefined ? { value } : { value, tolerance: { plus: mm(first), minus: mm(second ?? first) } };
}

/** A place of its own for every thing built, in the order of building. */
export class Places {
  private next = 0;

  source(): Source {
    const start = this.next;
    this.next += 10;
    return { uri: 'test:cabinet.joinery', start, end: start + 9 };
  }

  length(length: Length): Written {
    if (typeof length === 'object') return length;
    return { value: mm(length), terms: [], text: String(length), source: this.source() };
  }

  /** `lh.bottom`, `back.groove.front`, `lh.notch.front`, `base.cant`; a part's name alone stands for its side `side`. */
  plane(text: string, side?: Side): PlaneRef {
    const words = text.split('.');
    if (words[1] === 'cant') return { part: words[0] ?? '', plane: 'front', of: 'cant', source: this.source() };
    const last = words.at(-1) as Side;
    if (!SIDES.includes(last)) {
      if (side === undefined) throw new Error(`${text} names no side`);
      return { part: text, plane: side, of: 'part', source: this.source() };
    }
    const of = words.length === 3 ? (words[1] as 'groove' | 'notch') : 'part';
    return { part: words[0] ?? '', plane: last, of, source: this.source() };
  }
}

/** The length that a parameter has, as a spec refers to it. */
export function parameter(name: string, value: number | string): Written {
  return {
    ...ofInput(`parameter ${name}`, mm(value)),
    text: name,
    source: { uri: 'test:cabinet.joinery', start: 0, end: 0 },
  };
}
