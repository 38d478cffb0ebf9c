import type { Text } from '../fit/text.js';
import type { Source } from '../spec/source.js';
import type { PartId } from '../spec/spec.js';

/** Something said of a turned part that is not worked out: why, and what can be said instead. */
export interface Refused {
  readonly message: Text;
  readonly cure: Text;
  readonly source: Source;
  readonly part: PartId;
  /** The statement it stands in, when it is one. */
  readonly statement?: string | undefined;
}
