import { say, type Text } from '../../fit/text.js';
import type { Rational } from '../../number/rational.js';
import type { Equation } from '../../solve/index.js';
import { axisOfDimension, highSide, lowSide } from '../../spec/sides.js';
import type { Fact, JointStatement, PartId, Statement, Written } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';

/** The number in the text that an equation takes its value from. */
export interface WrittenNumber {
  readonly statement: Statement;
  readonly written: Written;
  /** +1 when the equation's value grows with the number, −1 when it shrinks. */
  readonly sign: 1 | -1;
}

type Looked = Pick<CheckContext, 'solved' | 'statement'>;

/** Finds the number as written; undefined for facts that state none (flush) and for those nobody wrote. */
export function writtenNumber(context: Looked, equation: Equation): WrittenNumber | undefined {
  const statement = context.statement(equation.statement);
  if (!statement) return undefined;
  const written = lengthIn(context, statement, equation);
  if (!written || written.value.isZero()) return undefined;
  const value = equation.value.value;
  if (value.equals(written.value)) return { statement, written, sign: 1 };
  return value.equals(written.value.neg()) ? { statement, written, sign: -1 } : undefined;
}

function lengthIn(context: Looked, statement: Statement, equation: Equation): Written | undefined {
  switch (statement.kind) {
    case 'dimension':
      return statement.length;
    case 'joint':
      return (
        statement.facts.map((fact) => numberOf(context, fact, statement.entering, equation)).find((n) => n) ??
        grooveWidth(context, statement, equation)
      );
    case 'placing':
      return numberOf(context, statement.fact, statement.parts, equation);
    case 'notch':
      return statement.legs.find(({ dimension }) =>
        [lowSide(axisOfDimension(dimension)), highSide(axisOfDimension(dimension))].some((side) =>
          statement.parts.some((part) =>
            mentions(equation, context.solved.system.planes.notch(part, side, statement.corner)),
          ),
        ),
      )?.length;
    default:
      return undefined;
  }
}

function numberOf(context: Looked, fact: Fact, parts: readonly PartId[], equation: Equation): Written | undefined {
  if (fact.kind !== 'set back' && fact.kind !== 'proud' && fact.kind !== 'at') return undefined;
  const { planes } = context.solved.system;
  if (!mentions(equation, planes.of(fact.plane))) return undefined;
  const nth = parts.findIndex((part) => mentions(equation, planes.side(part, fact.side)));
  if (nth < 0) return undefined;
  if (fact.kind !== 'at') return fact.by;
  return fact.by.length === 1 ? fact.by[0] : fact.by[nth];
}

function grooveWidth(context: Looked, joint: JointStatement, equation: Equation): Written | undefined {
  const { planes } = context.solved.system;
  const walls = joint.entering.flatMap((part) =>
    (['left', 'right', 'front', 'rear', 'bottom', 'top'] as const).map((side) => planes.groove(part, side)),
  );
  return walls.some((wall) => mentions(equation, wall)) ? joint.width : undefined;
}

const mentions = (equation: Equation, unknown: number | undefined): boolean =>
  unknown !== undefined && equation.terms.some((term) => term.unknown === unknown);

/** "Write 16.2 instead of 16", or for a sum of parameters "Make wide − 40 larger by 0.2". */
export function rewrite({ written }: WrittenNumber, by: Rational): Text {
  if (written.terms.length === 0 && /^[\d\s./]+("|mm|in)?$/.test(written.text.trim())) {
    return say`write ${written.value.add(by)} instead of ${written.value}`;
  }
  return say`make ${`"${written.text}"`} ${by.abs()} ${by.sign() > 0 ? 'more' : 'less'}`;
}
