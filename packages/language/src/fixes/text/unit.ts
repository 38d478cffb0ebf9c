import { AstUtils, GrammarUtils } from 'langium';
import {
  type Expression,
  isBinary,
  isExpression,
  isLiteral,
  isMeasure,
  isParameter,
  isParameterUse,
  type Parameter,
} from '../../generated/ast.js';
import type { Case, Cure, FileEdit, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { nodeOf, textAt } from '../support/node.js';
import { instead } from '../support/place.js';

/** Makes a count of what is written as a length, or a length of what is declared as a count. */
export const unit: Fix = {
  name: 'unit',
  codes: ['unit-mismatch'],
  most: 3,
  mayFollow: {
    ...hiddenUntilRead(READ),
    'not-whole': 'a count is a whole number, which the length was not',
  },
  *offer(about): Iterable<Cure> {
    for (const expression of literalsIn(about)) {
      const { text } = expression;
      const bare = text.replace(/\s*(mm|in|["″])$/, '');
      if (bare !== text) yield { title: `Write ${bare}, without a unit`, edits: [instead(expression, bare)] };
    }
    const parameter = nodeOf(about, isParameter);
    if (parameter && !parameter.count) yield asCount(parameter, about);
    for (const used of countsIn(about)) {
      const edit = asLength(used, about);
      if (edit) yield { title: `Declare ${used.name} as a length`, edits: [edit] };
    }
  },
};

/** What the finding is about, and both operands where it points at an operator. */
function wholeOf(about: Case): Expression[] {
  const whole = nodeOf(about, isExpression) ?? nodeOf(about, isMeasure);
  const expression = whole && isExpression(whole) ? whole : (whole as { value?: Expression } | undefined)?.value;
  if (!expression) return [];
  const all = [expression, ...AstUtils.streamAllContents(expression).filter(isExpression)];
  const binary = nodeOf(about, isBinary);
  return binary && textAt(about).length === 1
    ? [binary, ...AstUtils.streamAllContents(binary).filter(isExpression)]
    : all;
}

const literalsIn = (about: Case) => wholeOf(about).filter(isLiteral).reverse();
const countsIn = (about: Case): readonly Parameter[] =>
  wholeOf(about)
    .filter(isParameterUse)
    .flatMap(({ parameter }) => parameter.ref ?? [])
    .filter(({ count }) => count);

function asCount(parameter: Parameter, { document }: Case): Cure {
  const uri = document.uri.toString();
  const at = GrammarUtils.findNodeForProperty(parameter.$cstNode, 'name')?.end ?? 0;
  return { title: `Declare ${parameter.name} as a count`, edits: [{ uri, start: at, end: at, text: ' : count' }] };
}

function asLength({ $cstNode: cst }: Parameter, { document }: Case): FileEdit | undefined {
  const found = /\s*:\s*count\b/.exec(cst?.text ?? '');
  if (!cst || !found) return undefined;
  const start = cst.offset + found.index;
  return { uri: document.uri.toString(), start, end: start + found[0].length, text: '' };
}
