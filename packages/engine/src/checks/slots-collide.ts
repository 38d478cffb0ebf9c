import type { Mark } from '../fit/finding.js';
import { say, type Text } from '../fit/text.js';
import { placeOut } from '../geometry/turn.js';
import { compareBounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import { type CutBody, cutBodies } from '../solids/cuts.js';
import { type NearCuts, nearCuts } from '../solids/near.js';
import { rowsComeNear } from '../solids/rows.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, byId, once } from './support/alike.js';
import { cutName } from './support/cut-names.js';
import { partNames } from './support/names.js';
import { thinnest } from './support/sheet.js';

/** Two cuts in one part run into each other, or leave less than the shop's skin between them. */
export const slotsCollide: Check = {
  code: 'slots-collide',
  severity: 'error',
  *run(context) {
    const near = tooNear(context, context.spec.shop.limits.skin);
    near.sort((a, b) => byId(a.one.id, b.one.id) || byId(a.two.id, b.two.id));
    // Two rows in one part once, where they come nearest; the same in the mirrored part with it.
    const rows = alike(near, ({ one, two }) => [one.part.id, rowBeside(one, two), rowBeside(two, one)]).map(rowsOf);
    const key = ({ one, two, apart, more }: Rows) => [
      cutName(context, one),
      cutName(context, two),
      apart.value.toFixed(6),
      more,
      one.statement,
    ];
    for (const group of alike(rows, key)) yield finding(context, group);
  },
};

interface Rows extends NearCuts {
  /** How many more pairs of theirs are too near. */
  readonly more: number;
  readonly all: readonly NearCuts[];
  /** Where each further part that meets this one comes nearest. */
  readonly others: readonly NearCuts[];
}

/** A row; beside a groove or another recess, all the rows of one statement, since it is the recess they all meet. */
const rowBeside = (own: CutBody, other: CutBody): string =>
  own.opening && !other.opening ? `all of ${own.statement ?? own.row}` : own.row;

function rowsOf(found: readonly [NearCuts, ...NearCuts[]]): Rows {
  const [first, ...rest] = alike(found, ({ one, two }) => [one.row, two.row])
    .map(nearest)
    .sort((a, b) => a.apart.value - b.apart.value);
  return { ...(first ?? found[0]), more: found.length - 1, all: found, others: rest };
}

const nearest = (found: readonly [NearCuts, ...NearCuts[]]): NearCuts =>
  found.reduce((least, pair) => (pair.apart.value < least.apart.value ? pair : least));

/** The pairs that are too near, the row that comes first by name first in each. */
function tooNear(context: CheckContext, skin: Rational): NearCuts[] {
  const asked = skin.toNumber();
  const near: NearCuts[] = [];
  for (const part of context.fit.parts) {
    if (part.cuts.length < (part.cant ? 1 : 2)) continue;
    const thin = thinnest(context, part);
    if (!rowsComeNear(part, thin, context.joint, asked)) continue;
    for (const pair of nearCuts(cutBodies(part, thin, context.joint), asked)) {
      if (pair.apart.value !== 0 && compareBounded(pair.apart, skin) !== -1) continue;
      const { one, two, from, to } = pair;
      near.push(byId(one.row, two.row) <= 0 ? pair : { ...pair, one: two, two: one, from: to, to: from });
    }
  }
  return near;
}

function finding(context: CheckContext, group: readonly [Rows, ...Rows[]]): Found {
  const [{ one, two, apart }] = group;
  const { skin } = context.spec.shop.limits;
  const parts = once(group.map((rows) => rows.one.part.id));
  const meet: Text =
    apart.value === 0 ? say`run into each other` : say`come within ${apart} of each other; the least is ${skin}`;
  const slots = group
    .flatMap((rows) => [rows, ...rows.others])
    .flatMap((pair) => [pair.one, pair.two])
    .flatMap(({ cut }) => ('slot' in cut ? cut.slot : []));
  // Whatever is a slot can be moved along its run; the recess, notch or mitre it meets is there for another reason.
  const movable = two.opening ? two : one;
  return {
    message: say`in ${partNames(context, parts)}, ${cutName(context, one)} and ${cutName(context, two)} ${meet}${further(context, group[0])}`,
    cure: movable.opening
      ? say`Move one of the rows along the joint or leave a line out there, take a smaller connector, or use thicker material.`
      : say`Make one of them shallower, move one, or use thicker material.`,
    source: movable.cut.source,
    related: [
      { message: say`the other cut comes from here`, source: (movable === two ? one : two).cut.source },
      ...group.map(({ one: { part } }) => ({ message: say`${part.id} is of ${part.material}`, source: part.source })),
    ],
    about: { parts, joint: movable.joint, slots, statement: movable.statement },
    marks: group.flatMap(({ all }) => all.map(markOf)),
  };
}

/** What else is too near: more pairs of the same two rows, or the rows of further parts. */
function further(context: CheckContext, { more, others }: Rows): Text {
  const parts = once(others.flatMap(({ one, two }) => (one.opening ? one : two).other ?? []));
  if (parts.length > 0) {
    const pairs = more === 1 ? 'one more pair' : `${more} more pairs`;
    const verb = more === 1 ? 'does' : 'do';
    return [`, and so ${verb} ${pairs}, with the rows for `, ...partNames(context, parts), ' as well'];
  }
  if (more === 0) return [];
  return more === 1
    ? say`, and so does one more pair of these two rows`
    : [`, and so do ${more} more pairs of these two rows`];
}

const markOf = ({ one, from, to, apart }: NearCuts): Mark => ({
  part: one.part.id,
  from: placeOut(one.part.turn, from),
  to: placeOut(one.part.turn, to),
  words: apart.value === 0 ? say`cuts meet` : say`${apart} left`,
});
