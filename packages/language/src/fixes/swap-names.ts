import type { AstNode } from 'langium';
import { isDimensionLine, isJoint } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { because, MILLING, SIZES } from './support/follow.js';
import { instead, statementOf } from './support/place.js';

/** Turns the two parts of a statement round: left before right, front before rear, bottom before top. */
export const swapNames: Fix = {
  name: 'swap-names',
  codes: ['named-backwards'],
  mayFollow: because(
    'what has a size above nothing can be looked at for the first time',
    ...MILLING,
    ...SIZES,
    'parts-overlap',
  ),
  *offer(about): Iterable<Cure> {
    const { low, high } = about.finding.data ?? {};
    const statement = statementOf(about);
    const pairs: readonly (readonly [AstNode | undefined, AstNode | undefined])[] = isDimensionLine(statement)
      ? [[statement.low, statement.high]]
      : isJoint(statement)
        ? statement.between.map((pair) => [pair.low, pair.high])
        : [];
    for (const [a, b] of pairs) {
      const [one, two] = [a?.$cstNode?.text, b?.$cstNode?.text];
      if (!a || !b || one === undefined || two === undefined) continue;
      if (pairs.length > 1 && !(one.startsWith(String(low)) && two.startsWith(String(high)))) continue;
      yield { title: `Name ${two} before ${one}`, edits: [instead(a, two), instead(b, one)], preferred: true };
    }
  },
};
