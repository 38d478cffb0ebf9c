import type { Rational, Side } from '@dryfit/engine';
import { shuffled } from '../random.js';
import { inMillimetres, type Spelling } from '../spelling.js';

/** A statement that can be written in either hand and in any units. */
export interface Item {
  readonly head: (write: Writer) => string;
  /** What stands in its braces; without it there are none. */
  readonly facts?: readonly ((write: Writer) => string)[] | undefined;
}

/** A cabinet and the stock it draws on, before it is written down. */
export interface Plan {
  readonly name: string;
  readonly stock: readonly Item[];
  readonly items: readonly Item[];
}

export interface Manner {
  readonly spelling?: Spelling;
  /** Left and right change places everywhere. */
  readonly mirrored?: boolean;
  /** Seed of another order of statements, and of facts within them. */
  readonly order?: number;
}

/** Writes the words of a statement that depend on hand and units. */
export class Writer {
  constructor(
    private readonly spelling: Spelling,
    private readonly mirrored: boolean,
  ) {}

  /** A length that may be written as a sum. */
  sum(length: Rational): string {
    return this.spelling.write(length, true);
  }

  /** A length that has to be one literal. */
  len(length: Rational): string {
    return this.spelling.write(length);
  }

  /** Several lengths with commas between. */
  list(lengths: readonly Rational[]): string {
    return lengths.map((length) => this.spelling.write(length)).join(', ');
  }

  side(side: Side): string {
    if (!this.mirrored) return side;
    return side === 'left' ? 'right' : side === 'right' ? 'left' : side;
  }

  sides(...sides: readonly Side[]): string {
    return sides.map((side) => this.side(side)).join(', ');
  }

  /** Two names that stand left and right of each other, the left one first. */
  across(left: string, right: string): string {
    return this.mirrored ? `${right} and ${left}` : `${left} and ${right}`;
  }

  toward(toward: 'left of' | 'right of'): string {
    return (toward === 'left of') === this.mirrored ? 'right of' : 'left of';
  }
}

/** The plan as a file of its own. */
export function write(plan: Plan, manner: Manner = {}): string {
  const { spelling = inMillimetres, mirrored = false, order } = manner;
  const writer = new Writer(spelling, mirrored);
  const reorder = <T>(list: readonly T[], salt: number): readonly T[] =>
    order === undefined ? list : shuffled(list, order + salt);
  const text = (item: Item, indent: string, salt: number): string => {
    const head = `${indent}${item.head(writer)}`;
    if (item.facts === undefined) return head;
    const facts = reorder(item.facts, salt).map((fact) => `${indent}  ${fact(writer)}`);
    return [`${head} {`, ...facts, `${indent}}`].join('\n');
  };
  const items = reorder(plan.items, 1).map((item, i) => text(item, '  ', i + 2));
  const cabinet = `cabinet ${plan.name} {\n${items.join('\n')}\n}`;
  // A setting's values keep their order; only whole settings and entries change places.
  const entries = reorder([...plan.stock.map((item, i) => text(item, '', i + 100)), cabinet], 3);
  return `units ${spelling.units}\n\n${entries.join('\n\n')}\n`;
}
