import { axisOfDimension, highSide, lowSide } from '@dryfit/engine';
import { isDimensionLine } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { instead, statementOf } from './support/place.js';

/** Says that two parts touch, where the clear room between them is written as nothing or less. */
export const touching: Fix = {
  name: 'touching',
  codes: ['openings-negative'],
  *offer(about): Iterable<Cure> {
    const statement = statementOf(about);
    if (!isDimensionLine(statement) || !statement.low?.$cstNode || !statement.high?.$cstNode) return;
    const axis = axisOfDimension(statement.dimension);
    const [low, high] = [statement.low.$cstNode.text, statement.high.$cstNode.text];
    const line = `${high}.${lowSide(axis)} against ${low}.${highSide(axis)}`;
    yield { title: `Say that they touch: ${line}`, edits: [instead(statement, line)] };
  },
};
