import type { FittedJoint } from '../../fit/fit.js';
import type { Rational } from '../../number/rational.js';
import type { Layout } from '../../spec/stock.js';
import type { CheckContext } from '../check.js';

/** The layout a joint is strung by: its own or the cabinet's, written in place or as a pattern. */
export function layoutOf({ spec, statement }: CheckContext, joint: FittedJoint): Layout | undefined {
  const written = statement(joint.statement);
  if (!joint.connector || written?.kind !== 'joint') return undefined;
  const connect = written.connect ?? spec.connect;
  if (connect?.kind !== 'by') return undefined;
  return typeof connect.pattern === 'string' ? spec.shop.patterns.get(connect.pattern)?.layout : connect.pattern;
}

/**
 * By how much a spread layout's first and last distances together exceed the contact, mm: the two lines it asks
 * for do not go in. Undefined where they do, or where the lines are fixed ones.
 */
export function spreadTooLong(context: CheckContext, joint: FittedJoint): Rational | undefined {
  const layout = layoutOf(context, joint);
  if (layout?.kind !== 'spread' || !joint.contact) return undefined;
  const over = layout.first.add(layout.last).sub(joint.contact.hi.sub(joint.contact.lo));
  return over.sign() > 0 ? over : undefined;
}
