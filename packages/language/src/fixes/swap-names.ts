import type { AstNode } from 'langium';
import { isDimensionLine, isJoint } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { instead, statementOf } from './support/place.js';

/** Turns the two parts of a statement round: left before right, front before rear, bottom before top. */
export const swapNames: Fix = {
  name: 'swap-names',
  codes: ['named-backwards'],
  mayFollow: Object.fromEntries(
    [
      'slot-near-edge',
      'slots-collide',
      'spacer-not-in-stock',
      'ends-differ',
      'stop-not-on-step',
      'stop-out-of-range',
      'groove-shows',
      'look-alike',
      'shelf-proud',
      'joint-can-rotate',
      'spacer-alias',
      'thin-wall',
      'parts-overlap',
      'part-not-fixed',
      'no-connector-lands',
      'pair-too-short',
      'fence-out-of-reach',
      'never-measured',
      'handed',
    ].map((code) => [code, 'what needs a size above nothing could not be looked at before']),
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
