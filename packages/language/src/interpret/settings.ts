import { type Finding, type Rational, say, type Text, type Toleranced } from '@dryfit/engine';
import type { AstNode } from 'langium';
import { notOfThisKind } from '../checks/not-of-this-kind.js';
import { settingMissing } from '../checks/setting-missing.js';
import { settingWrong } from '../checks/setting-wrong.js';
import { writtenTwice } from '../checks/written-twice.js';
import type { Expression, Measure, ParameterUse } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';
import { readMeasure } from './measure.js';
import { Places } from './source.js';
import { asLength, evaluateLength, type Reading } from './values.js';

/** Least value that a figure may have. */
export type Least = 'above zero' | 'zero' | 'any';

/** Reads the settings of one entry of a shop: each at most once, none that the entry cannot do without missing. */
export class Settings<N extends AstNode & { readonly name?: string }> {
  readonly places: Places;
  readonly reading: Reading;
  private lacking = false;

  /** `what` is the entry in the trade's words, such as "material birch18". */
  constructor(
    readonly node: N,
    readonly what: string,
    unit: Unit,
    readonly report: (finding: Finding) => void,
  ) {
    this.places = new Places(node);
    // A shop's figures are numbers: a name in one is unknown, and reported as such.
    this.reading = {
      places: this.places,
      unit,
      report,
      parameter: (_: unknown, _use: ParameterUse | Expression) => undefined,
    };
  }

  /** True when something needed was missing or wrong, so that nothing can be made of the entry. */
  get incomplete(): boolean {
    return this.lacking;
  }

  /** The one value of a setting that may be left out. */
  one<T>(written: readonly T[], words: string, property: string): T | undefined {
    if (written.length > 1) {
      const again = this.places.property(this.node, property, 1);
      this.report(
        writtenTwice({
          source: again,
          message: say`${words} is written twice for ${this.what}`,
          cure: say`Take one of the two out.`,
          related: [{ message: say`first here`, source: this.places.property(this.node, property, 0) }],
        }),
      );
    }
    return written[0];
  }

  /** The one value of a setting that cannot be left out. */
  needed<T>(written: readonly T[], words: string, property: string, example: string): T | undefined {
    const value = this.one(written, words, property);
    if (value === undefined) this.missing(words, example);
    return value;
  }

  missing(words: string, example: string): void {
    this.lacking = true;
    this.report(
      settingMissing({
        source: this.places.property(this.node, 'name'),
        message: say`${this.what} has no ${words}`,
        cure: say`Write it in its braces, as in ${example}.`,
      }),
    );
  }

  /** Settings that this kind of thing does not have. */
  refuse(property: string, written: readonly unknown[], words: string, why: Text): void {
    if (written.length === 0) return;
    this.report(
      notOfThisKind({
        source: this.places.property(this.node, property),
        message: say`${this.what} takes no ${words}: ${why}`,
        cure: say`Take it out.`,
      }),
    );
  }

  /** Marks the entry as unusable because of something reported elsewhere. */
  fail(): undefined {
    this.lacking = true;
    return undefined;
  }

  /** A length in mm. */
  length(expression: Expression | undefined, words: string, least: Least = 'above zero'): Rational | undefined {
    const quantity = evaluateLength(expression, this.reading);
    if (!expression || !quantity) return undefined;
    return this.within(quantity.value, expression, words, least);
  }

  /** A length that cannot be left out; the entry is incomplete without it. */
  neededLength(written: readonly Expression[], words: string, property: string, example: string): Rational | undefined {
    const expression = this.needed(written, words, property, example);
    const value = this.length(expression, words);
    if (value === undefined) this.lacking = true;
    return value;
  }

  optionalLength(written: readonly Expression[], words: string, property: string, least?: Least): Rational | undefined {
    return this.length(this.one(written, words, property), words, least);
  }

  /** A length with its tolerance. */
  toleranced(measure: Measure | undefined, words: string): Toleranced | undefined {
    const read = readMeasure(measure, this.reading);
    if (!measure || !read || read.value.kind === 'count') return undefined;
    const value = this.within(asLength(read.value, this.reading.unit).value, measure, words, 'above zero');
    if (value === undefined) return undefined;
    return { value, tolerance: read.tolerance, source: this.places.of(measure) };
  }

  private within(value: Rational, node: AstNode, words: string, least: Least): Rational | undefined {
    const sign = value.sign();
    if (least === 'any' || sign > 0 || (sign === 0 && least === 'zero')) return value;
    const limit = least === 'zero' ? 'below 0' : '0 or less';
    this.wrong(
      node,
      say`the ${words} of ${this.what} cannot be ${limit}; it is ${value}`,
      say`Write the figure you measure.`,
    );
    return undefined;
  }

  wrong(node: AstNode, message: Text, cure: Text): void {
    this.report(settingWrong({ source: this.places.of(node), message, cure }));
  }
}
