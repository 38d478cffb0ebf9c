import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { opposite, thicknessAxis } from '../spec/sides.js';
import type { Check } from './check.js';
import { alike } from './support/alike.js';
import { milledHalves } from './support/halves.js';
import { partNames } from './support/names.js';

/** A slot milled from the wrong face is off by more than a step may be, and still goes together. */
export const wrongFaceHides: Check = {
  code: 'wrong-face-hides',
  severity: 'warning',
  *run(context) {
    const { step } = context.spec.shop.limits;
    const found = [...milledHalves(context)].flatMap((milled) => {
      const { half, part, machine, connector } = milled;
      const thickness = part.extent[thicknessAxis(part.attitude)];
      if (half.role !== 'edge' || half.slots.length === 0 || !thickness) return [];
      const off = thickness.sub(half.across.mul(Rational.TWO)).abs();
      const play = machine.kerf.sub(connector.thickness);
      return off.gt(step) && off.le(play) ? [{ ...milled, thickness, off, play }] : [];
    });
    for (const group of alike(found, ({ joint, off }) => [joint.statement, off])) {
      const [{ joint, half, thickness, off, play, connector }] = group;
      const parts = [...new Set(group.map(({ part }) => part.id))];
      const face = half.from.side;
      const nearer = half.across.mul(Rational.TWO).lt(thickness);
      yield {
        message: say`the slots of ${partNames(context, parts)} lie ${half.across} from the ${face} face of ${thickness}: milled from the ${opposite(face)} by mistake they are ${off} off, and ${connector.name} has ${play} of play across, so that it still goes together, with a step of ${off}`,
        cure: say`Set the slots in the middle (centred in thickness), or so far off it that a wrong one shows: at ${nearer ? 'less' : 'more'} than ${(nearer ? thickness.sub(play) : thickness.add(play)).div(Rational.TWO)} from reference.`,
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, slots: half.slots.map((slot) => slot.id), statement: joint.statement },
        data: { off: off.toString(), play: play.toString() },
      };
    }
  },
};
