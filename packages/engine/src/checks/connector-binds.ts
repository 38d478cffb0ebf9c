import type { Mark } from '../fit/finding.js';
import type { FittedJoint } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { goesIn } from '../geometry/mouth.js';
import { boundedOf, subBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { type Binding, bindingOf } from '../solids/connector.js';
import type { Connector, Machine } from '../spec/stock.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, byId, once } from './support/alike.js';
import { roundedDown, roundedUp } from './support/round.js';

/** A connector meets the round of its slots before the joint closes, though each of its measures goes in. */
export const connectorBinds: Check = {
  code: 'connector-binds',
  severity: 'error',
  *run(context) {
    const bound = [...binding(context)].sort((a, b) => byId(a.joint.id, b.joint.id));
    // The connector, its machine and the depths are to blame, wherever they are used.
    const groups = alike(bound, ({ connector, machine, joint }) => [
      connector.name,
      machine.name,
      ...joint.halves.map(({ depth }) => depth),
    ]);
    for (const group of groups) yield finding(group);
  },
};

interface Bound {
  readonly joint: FittedJoint;
  readonly connector: Connector;
  readonly machine: Machine;
  readonly binding: Binding;
}

function* binding({ fit }: CheckContext): Generator<Bound> {
  const known = new Map<string, Binding | undefined>();
  for (const joint of fit.joints) {
    const { connector, machine, halves } = joint;
    if (!connector || !machine || halves.length !== 2 || halves.every(({ slots }) => slots.length === 0)) continue;
    const depths = halves.map(({ depth }) => depth);
    const key = [connector.name, machine.name, ...depths].join('\n');
    if (!known.has(key))
      known.set(key, told(connector, machine, depths) ? undefined : bindingOf(connector, machine, depths));
    const found = known.get(key);
    if (found) yield { joint, connector, machine, binding: found };
  }
}

/** Too long, too thick or too wide a connector has a finding of its own. */
const told = (connector: Connector, machine: Machine, depths: readonly Rational[]): boolean =>
  connector.thickness.gt(machine.kerf) ||
  depths.some((depth) => !goesIn(connector, machine, depth)) ||
  Rational.sum(depths).lt(connector.across.add(connector.clearance ?? Rational.ZERO));

function finding(group: readonly [Bound, ...Bound[]]): Found {
  const [{ joint, connector, machine, binding: found }] = group;
  const { message, cure, data } =
    found.kind === 'on the arc' ? arcWords(connector, machine, found) : cornerWords(connector, machine, found);
  return {
    message,
    cure,
    source: joint.source,
    related: [
      { message: say`${connector.name} is described here`, source: connector.source },
      { message: say`${machine.name} is described here`, source: machine.source },
    ],
    about: {
      parts: once(group.flatMap(({ joint: { entering, host } }) => [entering, host])),
      joint: joint.id,
      statement: joint.statement,
    },
    data,
    marks: group.flatMap(marksOf),
  };
}

interface Words {
  readonly message: Text;
  readonly cure: Text;
  readonly data: Readonly<Record<string, string>>;
}

function arcWords(
  connector: Connector,
  machine: Machine,
  { need, room, short }: Extract<Binding, { kind: 'on the arc' }>,
): Words {
  const glue = connector.clearance ?? Rational.ZERO;
  const ends = say`${connector.along.div(Rational.TWO)} from the middle`;
  const with_ = glue.sign() > 0 ? say` with ${glue} of room for glue` : say``;
  const widest = roundedDown(subBounded(room, boundedOf(glue)));
  const deeper = roundedUp({ value: short.value / 2, error: short.error / 2 });
  const narrower =
    widest.sign() > 0 && connector.shape !== 'biscuit' ? say`, or take a connector at most ${widest} across` : say``;
  return {
    message: say`the ends of ${connector.name}, ${ends}, are ${need} across${with_}, but there the two slots that ${machine.name} leaves are only ${room} deep together: it binds on the arc and the joint stays ${short} open`,
    cure: say`Plunge ${deeper} deeper in both halves${narrower}, a shorter one, or one shaped for a disc.`,
    data: { short: roundedUp(short).toString() },
  };
}

function cornerWords(
  connector: Connector,
  machine: Machine,
  { short, length }: Extract<Binding, { kind: 'at the corners' }>,
): Words {
  const word = machine.kind === 'drill' ? 'hole' : 'mortise';
  const enough = roundedUp(length);
  return {
    message: say`the ends of ${connector.name} are square and ${connector.thickness} thick, but the ${word} that ${machine.name} leaves is round at its ends: the corners stand ${short} into the wood`,
    cure:
      machine.kind === 'drill'
        ? say`Take a connector that is round, or have it cut by a machine that leaves a longer slot.`
        : say`Make the mortise at least ${enough} long: slot ${enough}, or take a connector with round ends.`,
    data: { slot: enough.toString() },
  };
}

/** On a mitre a slot's middle lies off the line it is kept by, so nothing is marked there. */
const marksOf = ({ joint }: Bound): readonly Mark[] =>
  joint.halves
    .filter(({ role }) => role !== 'mitre')
    .flatMap(({ part, slots }) =>
      slots.map(({ centre: { x, y, z } }) => {
        const at = [x.toNumber(), y.toNumber(), z.toNumber()] as const;
        return { part, from: at, to: at, words: say`binds` };
      }),
    );
