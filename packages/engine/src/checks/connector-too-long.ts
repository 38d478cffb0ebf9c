import { say, type Text } from '../fit/text.js';
import { goesIn, mouthLength } from '../geometry/mouth.js';
import type { Rational } from '../number/rational.js';
import type { Check, Found } from './check.js';
import { alike, byId } from './support/alike.js';
import { type Milled, milledHalves, openingWord } from './support/halves.js';
import { roundedUp } from './support/round.js';

/** A connector is longer than its slot is at the surface, or thicker than its slot is wide. */
export const connectorTooLong: Check = {
  code: 'connector-too-long',
  severity: 'error',
  *run(context) {
    const halves = [...milledHalves(context)]
      .filter((milled) => tooLong(milled) || tooThick(milled))
      .sort((a, b) => byId(a.joint.id, b.joint.id));
    // The connector, its machine and its plunge are to blame, wherever they are used.
    for (const [milled] of alike(halves, ({ connector, machine, half }) => [
      connector.name,
      machine.name,
      half.depth,
    ])) {
      const { joint, half, connector, machine } = milled;
      const word = openingWord(machine);
      const length = mouthLength(connector, machine, half.depth);
      const found: Text = tooLong(milled)
        ? say`${connector.name} is ${connector.along} long, but the ${word} that ${machine.name} leaves at a depth of ${half.depth} is only ${length} long at the surface`
        : say`${connector.name} is ${connector.thickness} thick, but ${machine.name} cuts only ${machine.kerf} wide`;
      yield {
        message: say`${found}: it does not go in`,
        cure: tooLong(milled)
          ? longCure(milled)
          : say`Take a connector at most ${machine.kerf} thick, or a machine that cuts at least ${connector.thickness} wide.`,
        source: joint.source,
        related: [
          { message: say`${connector.name} is described here`, source: connector.source },
          { message: say`${machine.name} is described here`, source: machine.source },
        ],
        about: { parts: [half.part], joint: joint.id, statement: joint.statement },
        ...(tooLong(milled) ? plungeData(milled) : {}),
      };
    }
  },
};

function tooLong({ connector, machine, half }: Milled): boolean {
  const length = half.slots[0]?.length;
  if (length && length.value - length.error > connector.along.toNumber() * (1 + 1e-9)) return false;
  return !goesIn(connector, machine, half.depth);
}

const tooThick = ({ connector, machine }: Milled): boolean => connector.thickness.gt(machine.kerf);

/**
 * A disc of diameter D opens a slot of length L at a plunge of (D − √(D² − L²))/2, the chord turned round; a
 * connector longer than the disc never goes in.
 */
function longCure(milled: Milled): Text {
  const { connector, machine, half } = milled;
  if (machine.kind !== 'disc') return say`Make the slot at least ${connector.along} long: slot ${connector.along}.`;
  if (connector.along.gt(machine.diameter))
    return say`Take a connector at most ${machine.diameter} long, or a larger cutter.`;
  return say`Plunge at least ${leastPlunge(milled)} instead of ${half.depth}, or take a shorter connector.`;
}

function leastPlunge({ connector, machine }: Milled): Rational {
  const d = machine.diameter.toNumber();
  const least = (d - Math.sqrt(d * d - connector.along.toNumber() ** 2)) / 2;
  return roundedUp({ value: least, error: 0 });
}

function plungeData(milled: Milled): Pick<Found, 'data'> {
  const { connector, machine } = milled;
  const possible = machine.kind === 'disc' && connector.along.le(machine.diameter);
  return possible ? { data: { plunge: leastPlunge(milled).toString() } } : {};
}
