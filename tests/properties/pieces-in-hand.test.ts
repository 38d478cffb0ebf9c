import type { FitJson, PlanJson } from '@dryfit/output';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { exampleText } from '../support/examples.js';
import { BEAMED, withShop } from '../support/own-shop.js';
import { planned } from '../support/planned.js';
import { examineText } from '../support/read.js';
import { cross, dot, type Vector } from '../support/vectors.js';

/*
 * A panel in somebody's hands, known by nothing but plan.json (and fit.json for its mitres). It is turned as its history
 * says, and must then lie as each operation wants it: the same panel, never its mirror image. A beam is laid over the bed and
 * must come to lie level.
 */

type SetUp = PlanJson['setUps'][number];
type Operation = SetUp['operations'][number];
type Side = Operation['surface'];
type Turn = PlanJson['histories'][number]['steps'][number]['turns'][number];

/** Where the six sides of a panel look, each as right, up, toward in the operator's view. */
type Looks = Readonly<Record<Side, Vector>>;

const SIDES = ['left', 'right', 'front', 'rear', 'bottom', 'top'] as const;
const OTHER: Record<Side, Side> = {
  left: 'right',
  right: 'left',
  front: 'rear',
  rear: 'front',
  bottom: 'top',
  top: 'bottom',
};

/** A vector turned about one of the operator's directions: two of its figures change. */
function turned(v: Vector, { about, degrees }: Turn): Vector {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const [right, up, toward] = v;
  if (about === 'right') return [right, c * up - s * toward, s * up + c * toward];
  if (about === 'up') return [c * right + s * toward, up, c * toward - s * right];
  return [c * right - s * up, s * right + c * up, toward];
}

const turnedAll = (looks: Looks, turn: Turn): Looks =>
  Object.fromEntries(SIDES.map((side) => [side, turned(looks[side], turn)])) as Looks;

/** Of a panel that is no mirror image, x cross y is z: its right, rear and top sides, in any view. */
const volume = ({ right, rear, top }: Looks): number => dot(cross(right, rear), top);

const near = (v: Vector, w: Vector): boolean => v.every((x, i) => Math.abs(x - (w[i] ?? 9)) < 1e-9);

/** As an operation wants a panel: two of its sides are told, a third follows since the panel is no mirror image. */
function wanted(operation: Operation): Looks {
  const { surface, reference } = operation;
  const up = reference.looks === 'up' ? 1 : -1;
  const from = reference.kind === 'heel' ? OTHER[reference.side] : reference.side;
  const known: Partial<Record<Side, Vector>> = {
    [surface]: [0, 0, 1],
    [OTHER[surface]]: [0, 0, -1],
    [from]: [0, up, 0],
    [OTHER[from]]: [0, -up, 0],
  };
  const [third = 'left'] = SIDES.filter((side) => !known[side]);
  for (const way of [1, -1]) {
    const looks = { ...known, [third]: [way, 0, 0], [OTHER[third]]: [-way, 0, 0] } as Looks;
    if (volume(looks) > 0) return looks;
  }
  throw new Error(`nothing lies as ${JSON.stringify(operation)} wants it`);
}

/** The side that a mitre's toe lies on is told by its bevel. */
function withToe(fit: FitJson, cabinet: string, part: string, operation: Operation): Operation {
  const { reference, surface } = operation;
  if (reference.kind !== 'toe' && reference.kind !== 'heel') return operation;
  const own = fit.cabinets.find(({ id }) => id === cabinet)?.parts.find(({ id }) => id === part);
  const bevel = own?.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === surface);
  return { ...operation, reference: { ...reference, side: bevel?.toe ?? reference.side } };
}

/** Follows every piece through its history, and returns what is not as the plan says. */
function mistakes(fit: FitJson, plan: PlanJson): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  for (const { pieces, steps } of plan.histories)
    for (const { cabinet, parts } of pieces)
      for (const part of parts) {
        let looks: Looks | undefined;
        let fence: string | undefined;
        let at = 0;
        for (const step of steps) {
          const say = (what: string) => found.push(`${part} of ${cabinet}, set-up ${step.setUp}: ${what}`);
          const operation = plan.setUps[step.setUp - 1]?.operations[step.operation];
          const mills = operation?.pieces.some((one) => one.cabinet === cabinet && one.parts.includes(part));
          if (!operation || !mills) {
            say('is not milled there');
            continue;
          }
          done.add(`${cabinet} ${part} ${step.setUp} ${step.operation}`);
          if (step.setUp < at) say('comes too late');
          at = step.setUp;
          const goal = wanted(withToe(fit, cabinet, part, operation));
          const now: Looks = looks ? step.turns.reduce(turnedAll, looks) : goal;
          if (Math.abs(volume(now) - 1) > 1e-9) say('is mirrored');
          if (!SIDES.every((side) => near(now[side], goal[side])))
            say(`lies wrong after ${JSON.stringify(step.turns)}`);
          // What the operator sees at his right hand is what goes to the right fence.
          const hand = now[operation.datum][0] > 0 ? 'right' : 'left';
          if (hand !== operation.fence) say(`has its datum at the ${hand} hand`);
          if (step.fenceChanges !== (fence !== undefined && fence !== operation.fence)) say('tells the fence wrong');
          fence = operation.fence;
          looks = now;
          pressed(operation, now).forEach(say);
        }
      }
  for (const setUp of plan.setUps)
    setUp.operations.forEach((operation, i) => {
      for (const { cabinet, parts } of operation.pieces)
        for (const part of parts)
          if (!done.has(`${cabinet} ${part} ${setUp.number} ${i}`)) found.push(`${part} of ${cabinet} is left out`);
    });
  return found;
}

/** The surfaces pressed home are those that look where fence, bed and machine are. */
function pressed({ held, fence, reference }: Operation, looks: Looks): string[] {
  const found: string[] = [];
  if (looks[held.along.side][0] !== 0 && looks[held.along.side][0] > 0 !== (fence === 'right'))
    found.push('is pressed against the wrong fence');
  const height = reference.kind === 'toe' || reference.kind === 'heel' ? undefined : looks[held.across.side][1];
  if (['bed', 'bench'].includes(held.across.to) && height !== undefined && height > -0.9)
    found.push('does not lie on the bed');
  if (held.across.to === 'machine' && height !== undefined && height < 0.9) found.push('is not under the base');
  return found;
}

/**
 * What a beam lies on, load by load: pieces side by side, each with its packer on it, or one piece and the packer at the far
 * end. Returns where it does not lie level, or where not all pieces have their turn.
 */
function beams(plan: PlanJson, thickness: (operation: Operation) => number): string[] {
  const found: string[] = [];
  for (const { operations, beside, alike, number } of plan.setUps) {
    const waiting = operations.map(({ count }) => count);
    const packers = operations.map(({ held }) => held.packers.map((one) => ({ ...one, mm: one.thickness.mm })));
    const take = (at: number, where: string, mm: number): number => {
      const own = packers[at]?.find((one) => one.where === where && Math.abs(one.mm - mm) < 1e-9 && one.pieces > 0);
      if (!own) return 0;
      own.pieces -= 1;
      return own.mm;
    };
    const of = (at: number): number => thickness(operations[at] as Operation);
    for (const { left, right, times } of beside)
      for (let i = 0; i < times; i++) {
        const [a, b] = [of(left), of(right)];
        const heights = [
          a + (a < b ? take(left, 'on the piece', b - a) : 0),
          b + (b < a ? take(right, 'on the piece', a - b) : 0),
        ];
        if (Math.abs((heights[0] ?? 0) - (heights[1] ?? 0)) > 1e-9)
          found.push(`set-up ${number}: ${heights} beside each other`);
        for (const at of [left, right]) waiting[at] = (waiting[at] ?? 0) - 1;
      }
    // Of pieces that are the same, two or more carry a beam level by themselves.
    for (const { shares, pieces, times } of alike) {
      if (pieces < 2) found.push(`set-up ${number}: a row of ${pieces}`);
      if (new Set(shares.map(({ operation }) => of(operation))).size > 1)
        found.push(`set-up ${number}: a row of pieces that are not equally thick`);
      for (const share of shares) waiting[share.operation] = (waiting[share.operation] ?? 0) - share.pieces * times;
    }
    waiting.forEach((alone, at) => {
      for (let i = 0; i < alone; i++)
        if (Math.abs(take(at, 'far end', of(at)) - of(at)) > 1e-9)
          found.push(`set-up ${number}: one alone lies aslant`);
      if (alone < 0) found.push(`set-up ${number}: more lie beside than there are`);
    });
    if (packers.flat().some(({ pieces }) => pieces > 0)) found.push(`set-up ${number}: packers are left over`);
  }
  return found;
}

function thicknessIn(fit: FitJson): (operation: Operation) => number {
  return ({ pieces: [first] }) => {
    const cabinet = fit.cabinets.find(({ id }) => id === first?.cabinet);
    return cabinet?.parts.find(({ id }) => id === first?.parts[0])?.cut?.thickness.mm ?? Number.NaN;
  };
}

const withBeam = (text: string): string => withShop(text, BEAMED);

test.each(['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'])('%s', async (name) => {
  const { results } = await examineText(exampleText(`${name}.joinery`));
  const { fit, plan } = await planned(results, 2);
  expect(plan.histories.length).toBeGreaterThan(0);
  expect(mistakes(fit, plan)).toEqual([]);
});

test('any cabinets, held either way as their shop says', async () => {
  let turns = 0;
  const ways = new Set<string>();
  await fc.assert(
    fc.asyncProperty(plans, fc.boolean(), async (plan, mirrored) => {
      const { results } = await examineText(write(plan, { mirrored }));
      const made = await planned(results, 1);
      expect(mistakes(made.fit, made.plan)).toEqual([]);
      turns += made.plan.histories.flatMap(({ steps }) => steps.flatMap((step) => step.turns)).length;
      for (const { edge, face } of results.map(({ spec }) => spec.shop.pose)) ways.add(`${edge} ${face}`);
    }),
    fixedFirst({ fixed: 20, numRuns: 40 }, plans, fc.boolean()),
  );
  expect(turns).toBeGreaterThan(40);
  expect(ways).toEqual(new Set(['down down', 'down up', 'up down', 'up up']));
});

test('under a beam, whatever lies on the bed lies level', async () => {
  const { results } = await examineText(withBeam(exampleText('periodicals.joinery')));
  for (const counts of [[4, 2], [1, 3], [2]]) {
    const { fit, plan } = await planned(results, ...counts);
    const operations = plan.setUps.flatMap((setUp) => setUp.operations);
    expect(operations.every(({ held }) => held.by === 'beam')).toBe(true);
    // Of pieces that lie beside others none needs a packer; all of these are equally thick.
    expect(operations.some(({ held }) => held.packers.length === 0)).toBe(true);
    if (counts[0] === 4) expect(operations.some(({ held }) => held.packers.length > 0)).toBe(true);
    expect(beams(plan, thicknessIn(fit))).toEqual([]);
  }
});

test('under a beam, the thinner of two gets a packer of what it lacks', async () => {
  const text = withBeam(exampleText('periodicals.joinery'))
    .replace('part top, base : level   of birch18', 'part top : level of birch18\n  part base : level of thin15')
    .replace('cabinet Periodicals', 'material thin15 { thickness 15 }\ncabinet Periodicals');
  const { results } = await examineText(text);
  const { fit, plan } = await planned(results, 4, 2);
  const packers = plan.setUps.flatMap(({ operations }) => operations.flatMap(({ held }) => held.packers));
  expect(new Set(packers.filter(({ where }) => where === 'on the piece').map(({ thickness }) => thickness.mm))).toEqual(
    new Set([2.7]),
  );
  expect(beams(plan, thicknessIn(fit))).toEqual([]);
  expect(mistakes(fit, plan)).toEqual([]);
});

test('a turn that is left out shows, and so does a packer', async () => {
  const { results } = await examineText(withBeam(exampleText('periodicals.joinery')));
  const { fit, plan } = await planned(results, 4, 2);
  const unturned: PlanJson = {
    ...plan,
    histories: plan.histories.map((history) => ({
      ...history,
      steps: history.steps.map((step) => ({ ...step, turns: [] })),
    })),
  };
  expect(mistakes(fit, unturned)).not.toEqual([]);
  const unpacked: PlanJson = {
    ...plan,
    setUps: plan.setUps.map((setUp) => ({
      ...setUp,
      operations: setUp.operations.map((one) => ({ ...one, held: { ...one.held, packers: [] } })),
    })),
  };
  expect(beams(unpacked, thicknessIn(fit))).not.toEqual([]);
});
