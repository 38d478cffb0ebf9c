import { say, type Text } from '../fit/text.js';
import { type CapturedPanel, type GluedAcross, moistureOf, solidWood } from '../load/solid-wood.js';
import { Rational } from '../number/rational.js';
import { dimensionOf } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';

/** Solid wood has no room to move, or is glued to what does not move with it. */
export const woodMoves: Check = {
  code: 'wood-moves',
  severity: 'warning',
  *run(context) {
    const found = solidWood(context.spec, context.fit);
    yield* panels(
      context,
      found.filter((one): one is CapturedPanel => one.kind === 'captured'),
    );
    yield* joints(
      context,
      found.filter((one): one is GluedAcross => one.kind === 'glued'),
    );
  },
};

function* panels(context: CheckContext, captured: readonly CapturedPanel[]): Iterable<Found> {
  const tight = captured.filter(({ swells, room, hold }) => swells.gt(room) || hold.sign() <= 0);
  const key = ({ grooves, width, room }: CapturedPanel) => [grooves[0].statement, grooves[1].statement, width, room];
  for (const group of alike(tight, key)) {
    const [panel] = group;
    const { grooves, width, swells, shrinks, room, axis, hold } = panel;
    const [groove] = grooves;
    const parts = group.map(({ part }) => part.id);
    const names = partNames(context, parts);
    const jams = swells.gt(room);
    yield {
      message: jams
        ? say`${names}, ${width} across the grain, swells ${swells} in its ${dimensionOf(axis)}${swing(context, 'most')}, and its grooves leave it ${room}: it pushes the joints apart`
        : say`${names}, ${width} across the grain, shrinks ${shrinks} in its ${dimensionOf(axis)}${swing(context, 'least')}, and can then slip ${hold.neg()} out of its groove`,
      cure: jams
        ? say`Give each of the two grooves a clearance of ${swells.div(Rational.TWO)} or more${deeper(panel)}, and glue the panel at its middle only.`
        : say`Cut the grooves ${hold.neg().add(Rational.ONE)} deeper or more, or pin the panel at its middle and allow this.`,
      source: groove.source,
      related: group.map(({ part }) => ({ message: say`${part.id} is of ${part.material}`, source: part.source })),
      about: { parts, joint: groove.id, statement: groove.statement },
      data: jams
        ? { clearance: swells.div(Rational.TWO).toString() }
        : { depth: panel.depth.sub(hold).add(Rational.ONE).toString() },
    };
  }
}

/** A groove no deeper than the clearance asked for holds nothing any more. */
const deeper = ({ hold, swells, room }: CapturedPanel): Text =>
  hold.sub(swells.sub(room)).sign() <= 0 ? say`, with grooves deep enough to hold it all the same` : say``;

function* joints(context: CheckContext, glued: readonly GluedAcross[]): Iterable<Found> {
  const limit = context.spec.shop.limits.movement;
  const key = ({ joint, length, differ }: GluedAcross) => [joint.statement, length, differ];
  for (const group of alike(
    glued.filter(({ differ }) => differ.gt(limit)),
    key,
  )) {
    const [{ joint, length, differ }] = group;
    const entering = once(group.map((one) => one.joint.entering));
    const hosts = once(group.map((one) => one.joint.host));
    yield {
      message: say`${partNames(context, entering)} and ${partNames(context, hosts)}, glued along ${length}, come to differ by ${differ} as their moisture swings${swing(context)}, and ${limit} is let pass: the wood splits or the joint opens`,
      cure: say`Let both have their grain the same way, glue only a short stretch and let the rest slide, or take a sheet in place of solid wood.`,
      source: joint.source,
      related: [],
      about: { parts: [...entering, ...hosts], joint: joint.id, statement: joint.statement },
    };
  }
}

/** " from 8 to 11 % of moisture". */
function swing({ spec }: CheckContext, way?: 'least' | 'most'): string {
  const { made, least, most } = moistureOf(spec);
  const percent = (r: Rational) => String(Number(r.toNumber().toFixed(2)));
  return way === undefined
    ? ` between ${percent(least)} and ${percent(most)} %, glued up at ${percent(made)} %`
    : ` from ${percent(made)} to ${percent(way === 'least' ? least : most)} % of moisture`;
}
