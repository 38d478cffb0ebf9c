import {
  constant,
  type Finding,
  minus,
  negate,
  plus,
  product,
  type Quantity,
  quotient,
  say,
  scale,
} from '@dryfit/engine';
import { divisionByZero } from '../checks/division-by-zero.js';
import { hyphenedFraction } from '../checks/hyphened-fraction.js';
import { notWhole } from '../checks/not-whole.js';
import { unitMismatch } from '../checks/unit-mismatch.js';
import type { Binary, Expression, Literal, Parameter } from '../generated/ast.js';
import { MILLIMETRES, readNumber, type Unit } from '../parser/numbers.js';
import { type Places, textOf } from './source.js';

/**
 * What a value may be used for. A plain number was written without a unit and adapts: it is a length in the units of
 * its file where a length is wanted, and a count where a count is.
 */
export type Kind = 'plain' | 'length' | 'count';

export interface Value {
  readonly kind: Kind;
  /** mm for a length. */
  readonly quantity: Quantity;
}

/** What an expression is read with. */
export interface Reading {
  readonly places: Places;
  /** The units of the file the expression stands in. */
  readonly unit: Unit;
  parameter(parameter: Parameter, use: Expression): Value | undefined;
  report(finding: Finding): void;
}

/** The value of an expression; undefined where a part of it is missing or wrong, which has then been reported. */
export function evaluate(expression: Expression | undefined, reading: Reading): Value | undefined {
  switch (expression?.$type) {
    case 'Literal':
      return literal(expression, reading);
    case 'Group':
      return evaluate(expression.value, reading);
    case 'Negative': {
      const value = evaluate(expression.value, reading);
      return value && { ...value, quantity: negate(value.quantity) };
    }
    case 'ParameterUse': {
      const parameter = expression.parameter?.ref;
      return parameter && reading.parameter(parameter, expression);
    }
    case 'Binary':
      return binary(expression, reading);
    default:
      return undefined;
  }
}

/** A length in mm with what it depends on. */
export function evaluateLength(expression: Expression | undefined, reading: Reading): Quantity | undefined {
  const value = evaluate(expression, reading);
  return value && expression && lengthOf(value, expression, reading);
}

export function lengthOf(value: Value, expression: Expression, reading: Reading): Quantity | undefined {
  if (value.kind !== 'count') return asLength(value, reading.unit);
  reading.report(
    unitMismatch({
      source: reading.places.expression(expression),
      message: say`${textOfExpression(expression)} is a count, and a length is wanted here`,
      cure: say`Multiply it by the length that each of them takes, or write a length.`,
    }),
  );
  return undefined;
}

/** A whole number from 0 up. */
export function evaluateCount(expression: Expression | undefined, reading: Reading): number | undefined {
  const value = evaluate(expression, reading);
  if (!value || !expression) return undefined;
  const source = reading.places.expression(expression);
  const text = textOfExpression(expression);
  if (value.kind === 'length') {
    const message = say`${text} is a length, and a count is wanted here`;
    reading.report(unitMismatch({ source, message, cure: say`Write how many, without a unit.` }));
    return undefined;
  }
  const count = value.quantity.value;
  if (count.isInteger() && count.sign() >= 0) return count.toNumber();
  const message = say`${text} comes to ${count.toString()}, and a count is a whole number`;
  reading.report(
    notWhole({ source, message, cure: say`Write a whole number, 0 or more.`, data: { value: count.toString() } }),
  );
  return undefined;
}

/** A plain number is a length in the units of its file. */
export function asLength(value: Value, unit: Unit): Quantity {
  return value.kind === 'plain' ? scale(value.quantity, MILLIMETRES[unit]) : value.quantity;
}

function literal(node: Literal, reading: Reading): Value | undefined {
  const { value, unit, unhyphened } = readNumber(node.text ?? '');
  if (value === undefined) {
    const message = say`${node.text ?? ''} divides by nothing`;
    reading.report(
      divisionByZero({ source: reading.places.of(node), message, cure: say`Write what it is divided by.` }),
    );
    return undefined;
  }
  if (unhyphened !== undefined) {
    reading.report(
      hyphenedFraction({
        source: reading.places.of(node),
        message: say`${node.text} reads as a subtraction and is meant as one number`,
        cure: say`Write ${unhyphened}, or blanks around the minus if you do subtract.`,
        data: { instead: unhyphened },
      }),
    );
  }
  return unit === undefined
    ? { kind: 'plain', quantity: constant(value) }
    : { kind: 'length', quantity: constant(value.mul(MILLIMETRES[unit])) };
}

function binary(node: Binary, reading: Reading): Value | undefined {
  const left = evaluate(node.left, reading);
  const right = evaluate(node.right, reading);
  if (!left || !right) return undefined;
  switch (node.operator) {
    case '+':
    case '-':
      return sum(node, left, right, reading);
    case '*':
      return multiple(node, left, right, reading);
    case '/':
      return share(node, left, right, reading);
    default:
      return undefined;
  }
}

function sum(node: Binary, left: Value, right: Value, reading: Reading): Value | undefined {
  const kinds = new Set([left.kind, right.kind]);
  if (kinds.has('length') && kinds.has('count')) return mismatch(node, left, right, reading);
  const kind = kinds.has('length') ? 'length' : kinds.has('count') ? 'count' : 'plain';
  const [a, b] = [left, right].map((value) => (kind === 'length' ? asLength(value, reading.unit) : value.quantity));
  if (!a || !b) return undefined;
  return { kind, quantity: node.operator === '+' ? plus(a, b) : minus(a, b) };
}

/** A length times how many is a length; a length times a length would be an area. */
function multiple(node: Binary, left: Value, right: Value, reading: Reading): Value | undefined {
  if (left.kind === 'length' && right.kind === 'length') {
    const message = 'a length times a length is an area, which nothing here is measured by';
    return wrong(node, reading, message, 'Take the unit off the one that says how many.');
  }
  return { kind: scaled(left, right), quantity: product(left.quantity, right.quantity) };
}

/** A length shared out is a length; one length over another says how many times it goes. */
function share(node: Binary, left: Value, right: Value, reading: Reading): Value | undefined {
  if (right.quantity.value.isZero()) {
    const source = reading.places.operator(node);
    const message = say`${textOfExpression(node.right)} comes to 0, and nothing can be divided by it`;
    reading.report(divisionByZero({ source, message, cure: say`Divide by something that is not 0.` }));
    return undefined;
  }
  const quantity = quotient(left.quantity, right.quantity);
  if (left.kind === 'length' && right.kind === 'length') return { kind: 'plain', quantity };
  if (right.kind === 'length') {
    const message = 'a number divided by a length is neither a length nor a count';
    return wrong(node, reading, message, 'Give the number its unit, or take it off the length.');
  }
  return { kind: scaled(left, right), quantity };
}

const scaled = (left: Value, right: Value): Kind =>
  left.kind === 'length' || right.kind === 'length'
    ? 'length'
    : left.kind === 'count' && right.kind === 'count'
      ? 'count'
      : 'plain';

function mismatch(node: Binary, left: Value, right: Value, reading: Reading): undefined {
  const how = node.operator === '+' ? 'added to' : 'taken from';
  const [a, b] = [textOfExpression(node.left), textOfExpression(node.right)];
  const count = left.kind === 'count' ? a : b;
  const message = `${b} is a ${right.kind} and cannot be ${how} ${a}, which is a ${left.kind}`;
  return wrong(node, reading, message, `Multiply ${count} by the length that each takes, as in ${count} * 32 mm.`);
}

function wrong(node: Binary, reading: Reading, message: string, cure: string): undefined {
  reading.report(unitMismatch({ source: reading.places.operator(node), message: [message], cure: [cure] }));
  return undefined;
}

/** An operation's own words, which are fewer than those of its syntax node. */
function textOfExpression(expression: Expression): string {
  if (expression.$type !== 'Binary') return textOf(expression);
  return `${textOfExpression(expression.left)} ${expression.operator} ${textOfExpression(expression.right)}`;
}
