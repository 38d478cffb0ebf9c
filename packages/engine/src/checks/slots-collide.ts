import { say, type Text } from '../fit/text.js';
import { distance, farApart } from '../geometry/distance.js';
import { type Bounded, compareBounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import { opposite } from '../spec/sides.js';
import type { Check, Found } from './check.js';
import { alike, byId } from './support/alike.js';
import { type Body, bodiesOf } from './support/bodies.js';

/** Two cuts in one part run into each other, or leave less than the shop's skin between them. */
export const slotsCollide: Check = {
  code: 'slots-collide',
  severity: 'error',
  *run(context) {
    const { skin } = context.spec.shop.limits;
    const near: Near[] = [];
    for (const part of context.fit.parts) {
      const bodies = [...bodiesOf(context, part)].sort((a, b) => byId(a.row, b.row));
      for (const [i, one] of bodies.entries()) {
        for (const two of bodies.slice(i + 1)) {
          const apart = matters(one, two) ? tooNear(one, two, skin) : undefined;
          if (apart) near.push({ one, two, apart });
        }
      }
    }
    // One finding for two rows in one part, at the place where they come nearest.
    for (const group of alike(near, ({ one, two }) => [one.part.id, one.row, two.row])) {
      const nearest = group.reduce((least, pair) => (pair.apart.value < least.apart.value ? pair : least));
      yield finding(nearest, group.length, skin);
    }
  },
};

interface Near {
  readonly one: Body;
  readonly two: Body;
  readonly apart: Bounded;
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

function tooNear(one: Body, two: Body, skin: Rational): Bounded | undefined {
  const asked = skin.toNumber();
  if (farApart(one.solid, two.solid, asked)) return undefined;
  const apart = distance(one.solid, two.solid, asked);
  if (apart.value === 0) return apart;
  return compareBounded(apart, skin) === -1 ? apart : undefined;
}

function finding({ one, two, apart }: Near, count: number, skin: Rational): Found {
  const meet: Text =
    apart.value === 0 ? say`run into each other` : say`come within ${apart} of each other; the least is ${skin}`;
  const more =
    count > 1
      ? say`, and so ${count > 2 ? `do ${count - 1} more pairs` : 'does one more pair'} of these two rows`
      : say``;
  const slots = [one, two].flatMap((body) => (body.slot === undefined ? [] : [body.slot]));
  // Whatever is a slot can be moved along its run; the recess or notch it meets is there for another reason.
  const movable = two.opening ? two : one;
  return {
    message: say`in ${one.part.id}, ${one.name} and ${two.name} ${meet}${more}`,
    cure: movable.opening
      ? say`Move one of the rows along the joint or leave a line out there, take a smaller connector, or use thicker material.`
      : say`Make one of them shallower, move one, or use thicker material.`,
    source: movable.source,
    related: [
      { message: say`the other cut comes from here`, source: movable === two ? one.source : two.source },
      { message: say`${one.part.id} is of ${one.part.material}`, source: one.part.source },
    ],
    about: { parts: [one.part.id], joint: movable.joint, slots, statement: movable.statement },
  };
}
