import { partStatement } from '../../sizes/system.js';
import type { Source } from '../../spec/source.js';
import type { CheckContext } from '../check.js';

/** Where a statement stands, or the declaration of the part whose thickness a fact states. */
export function sourceOf(context: CheckContext, statement: string): Source {
  return (
    context.statement(statement)?.source ??
    context.spec.parts.find((part) => partStatement(part) === statement)?.source ??
    context.spec.nameSource
  );
}
