import { say } from '../fit/text.js';
import type { Solved } from '../sizes/solved.js';
import type { PartSpec } from '../spec/spec.js';
import { cantOf } from './cant.js';
import type { Refused } from './refused.js';

/** A part that stands on a cant in a way that is not worked out: it must face one of a level part. */
export function* refusedStands({ spec, system }: Solved, part: PartSpec): Generator<Refused> {
  if (!part.on) return;
  const under = system.planes.part(part.on.part);
  const { source } = part.on;
  if (part.attitude !== 'facing') {
    yield {
      message: say`${part.id} is ${part.attitude}, and a part on a cant faces whoever looks at the cant`,
      cure: say`Declare it as facing: part ${part.id} : facing of ${part.material} on ${part.on.part}.cant.`,
      source,
      part: part.id,
    };
  }
  if (!under) return;
  if (under.attitude !== 'level' || under.on) {
    yield {
      message: say`${under.id} does not lie level, so a part on its cant would not stand upright; tilted parts are not worked out`,
      cure: say`Let it stand on the cant of a level part.`,
      source,
      part: part.id,
    };
  } else if (!cantOf(spec, under.id)) {
    yield {
      message: say`${under.id} has no cant for ${part.id} to stand on`,
      cure: say`Write the cant: cant ${under.id} at front right { width … depth … }.`,
      source,
      part: part.id,
    };
  }
}
