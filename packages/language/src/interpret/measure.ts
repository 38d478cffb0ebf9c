import { type Input, plus, type Quantity, Rational, say, type Tolerance, type Written } from '@dryfit/engine';
import { settingWrong } from '../checks/setting-wrong.js';
import type { Measure, Tolerance as ToleranceNode } from '../generated/ast.js';
import { textOf } from './source.js';
import { asLength, evaluate, evaluateLength, type Reading, type Value } from './values.js';

/** A value as written, with the tolerance written beside it, mm. */
export interface Measured {
  readonly value: Value;
  readonly tolerance?: Tolerance | undefined;
}

/** Reads `17.7 ± 0.2` and `18 plus 0.7 minus 0.9`; undefined where a part is missing or wrong. */
export function readMeasure(measure: Measure | undefined, reading: Reading): Measured | undefined {
  const value = evaluate(measure?.value, reading);
  if (!measure || !value) return undefined;
  if (!measure.tolerance) return { value };
  const tolerance = readTolerance(measure.tolerance, reading);
  if (!tolerance) return undefined;
  if (value.kind !== 'count') return { value, tolerance };
  reading.report(
    settingWrong({
      source: reading.places.of(measure.tolerance),
      message: say`a count has no tolerance`,
      cure: say`Take the tolerance out.`,
    }),
  );
  return { value };
}

/** `± 0.2` or `plus 0.7 minus 0.9`; undefined where a part is missing or wrong. */
export function readTolerance(node: ToleranceNode, reading: Reading): Tolerance | undefined {
  const both = evaluateLength(node.both, reading);
  const above = both ?? evaluateLength(node.plus, reading);
  const below = both ?? evaluateLength(node.minus, reading);
  if (!above || !below) return undefined;
  const tolerance = { plus: above.value, minus: below.value };
  if (tolerance.plus.sign() >= 0 && tolerance.minus.sign() >= 0) return tolerance;
  reading.report(
    settingWrong({
      source: reading.places.of(node),
      message: say`a tolerance says how far a length may be off either way, so neither figure is below 0`,
      cure: say`Write both figures without a sign, as in 18 plus 0.7 minus 0.9.`,
    }),
  );
  return undefined;
}

/** What a statement's lengths are read with: each written tolerance becomes an input of its own. */
export interface Writing extends Reading {
  /** Id of the statement the length stands in. */
  readonly statement: string;
  addInput(input: Omit<Input, 'id'>): string;
}

/** A length of a statement: exact, with what it depends on, its text and its place. */
export function readWritten(measure: Measure | undefined, writing: Writing): Written | undefined {
  const read = readMeasure(measure, writing);
  if (!measure || !read) return undefined;
  const length =
    read.value.kind === 'count' ? evaluateLength(measure.value, writing) : asLength(read.value, writing.unit);
  if (!length) return undefined;
  const source = writing.places.of(measure);
  const text = textOf(measure);
  if (!read.tolerance) return { ...length, source, text };
  const id = writing.addInput({
    label: text,
    kind: 'literal',
    value: length.value,
    tolerance: read.tolerance,
    source,
  });
  return { ...plus(length, deviation(id)), source, text };
}

/** What a written length's own tolerance adds: nothing now, and one for one when the length comes out otherwise. */
const deviation = (input: string): Quantity => ({
  value: Rational.ZERO,
  terms: [{ input, coefficient: Rational.ONE }],
});
