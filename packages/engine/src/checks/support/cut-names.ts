import { say, type Text } from '../../fit/text.js';
import type { CutBody } from '../../solids/cuts.js';
import type { CheckContext } from '../check.js';
import { partNames } from './names.js';

/** A cut as a message names it: "the slot for shelf 48 from the rear", "the groove for back", "its notch at the front". */
export function cutName(context: CheckContext, { cut, half, other, surface }: CutBody): Text {
  if (cut.kind === 'bevel') return say`the mitre with ${other ?? 'its neighbour'}`;
  if (cut.kind === 'cant') return say`its cant at the ${cut.corner.join(' ')}`;
  if ('box' in cut) {
    const joint = cut.joint === undefined ? undefined : context.statement(cut.joint);
    return joint?.kind === 'joint'
      ? say`the ${cut.kind} for ${partNames(context, joint.entering)}`
      : say`its ${cut.kind} at the ${surface}`;
  }
  const word = cut.kind === 'disc' ? 'slot' : cut.kind;
  const slot = half?.slots.find(({ id }) => id === cut.slot);
  const whose = other ?? 'its neighbour';
  return slot && half
    ? say`the ${word} for ${whose} ${slot.fromDatum} from the ${half.datum}`
    : say`a ${word} for ${whose}`;
}
