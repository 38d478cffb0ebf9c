import type { FittedJoint, FittedPart, Half } from '../../fit/fit.js';
import type { Connector, Machine } from '../../spec/stock.js';
import type { CheckContext } from '../check.js';

/** A milled half with everything a check asks of it. */
export interface Milled {
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly other: Half;
  readonly part: FittedPart;
  readonly connector: Connector;
  readonly machine: Machine;
}

/** What has been gathered for a cabinet: nearly every check asks for it. */
const gathered = new WeakMap<CheckContext, readonly Milled[]>();

/** Every half that has something milled into it, in the order of the joints. */
export function milledHalves(context: CheckContext): readonly Milled[] {
  const known = gathered.get(context) ?? [...gather(context)];
  gathered.set(context, known);
  return known;
}

function* gather(context: CheckContext): Generator<Milled> {
  for (const joint of context.fit.joints) {
    const { connector, machine } = joint;
    const [first, second] = joint.halves;
    if (!connector || !machine || !first || !second) continue;
    for (const [half, other] of [
      [first, second],
      [second, first],
    ] as const) {
      const part = context.part(half.part);
      if (part) yield { joint, half, other, part, connector, machine };
    }
  }
}

/** The word for what a machine leaves: slot, mortise or hole. */
export const openingWord = (machine: Machine): string =>
  machine.kind === 'disc' ? 'slot' : machine.kind === 'drill' ? 'hole' : 'mortise';
