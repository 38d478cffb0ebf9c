import { say, type Text } from '../fit/text.js';
import { distance, farApart } from '../geometry/distance.js';
import { type Bounded, compareBounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import { opposite } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, byId, once } from './support/alike.js';
import { type Body, bodiesOf } from './support/bodies.js';
import { partNames } from './support/names.js';

/** Two cuts in one part run into each other, or leave less than the shop's skin between them. */
export const slotsCollide: Check = {
  code: 'slots-collide',
  severity: 'error',
  *run(context) {
    const { skin } = context.spec.shop.limits;
    const near = context.fit.parts.flatMap((part) => pairs(bodiesOf(context, part), skin));
    near.sort((a, b) => byId(a.one.id, b.one.id) || byId(a.two.id, b.two.id));
    // Two rows in one part once, where they come nearest; the same in the mirrored part with it.
    const rows = alike(near, ({ one, two }) => [one.part.id, one.row, two.row]).map((found): Rows => {
      const nearest = found.reduce((least, pair) => (pair.apart.value < least.apart.value ? pair : least));
      return { ...nearest, more: found.length - 1 };
    });
    const key = ({ one, two, apart, more }: Rows) => [
      one.name(),
      two.name(),
      apart.value.toFixed(6),
      more,
      one.statement,
    ];
    for (const group of alike(rows, key)) yield finding(context, group);
  },
};

interface Near {
  readonly one: Body;
  readonly two: Body;
  readonly apart: Bounded;
}

interface Rows extends Near {
  /** How many more pairs of theirs are too near. */
  readonly more: number;
}

/**
 * Slots of one row are a matter of the row, and a slot belongs with the recess of its own joint. Recesses may run
 * into one another, but not from opposite sides.
 */
function matters(one: Body, two: Body): boolean {
  if (one.row === two.row || (one.statement === two.statement && one.opening !== two.opening)) return false;
  if (one.opening || two.opening) return true;
  return one.kind !== 'notch' && two.kind !== 'notch' && one.surface === opposite(two.surface);
}

/** The pairs that are too near, the row that comes first by name first in each. */
function pairs(bodies: readonly Body[], skin: Rational): readonly Near[] {
  const asked = skin.toNumber();
  const near: Near[] = [];
  for (let i = 0; i < bodies.length; i++) {
    const a = bodies[i];
    for (let j = i + 1; a && j < bodies.length; j++) {
      const b = bodies[j];
      // Boxes first: most pairs lie far apart, and the bodies themselves are dear.
      if (!b || farApart(a.bounds, b.bounds, asked) || !matters(a, b)) continue;
      const apart = distance(a.solid(), b.solid(), asked);
      if (apart.value !== 0 && compareBounded(apart, skin) !== -1) continue;
      near.push(byId(a.row, b.row) <= 0 ? { one: a, two: b, apart } : { one: b, two: a, apart });
    }
  }
  return near;
}

function finding(context: CheckContext, group: readonly [Rows, ...Rows[]]): Found {
  const [{ one, two, apart, more }] = group;
  const { skin } = context.spec.shop.limits;
  const parts = once(group.map((rows) => rows.one.part.id));
  const meet: Text =
    apart.value === 0 ? say`run into each other` : say`come within ${apart} of each other; the least is ${skin}`;
  const others =
    more > 1
      ? `, and so do ${more} more pairs of these two rows`
      : more > 0
        ? ', and so does one more pair of these two rows'
        : '';
  const slots = group.flatMap((rows) => [rows.one, rows.two]).flatMap((body) => body.slot ?? []);
  // Whatever is a slot can be moved along its run; the recess or notch it meets is there for another reason.
  const movable = two.opening ? two : one;
  return {
    message: say`in ${partNames(context, parts)}, ${one.name()} and ${two.name()} ${meet}${others}`,
    cure: movable.opening
      ? say`Move one of the rows along the joint or leave a line out there, take a smaller connector, or use thicker material.`
      : say`Make one of them shallower, move one, or use thicker material.`,
    source: movable.source,
    related: [
      { message: say`the other cut comes from here`, source: movable === two ? one.source : two.source },
      ...group.map(({ one: { part } }) => ({ message: say`${part.id} is of ${part.material}`, source: part.source })),
    ],
    about: { parts, joint: movable.joint, slots, statement: movable.statement },
  };
}
