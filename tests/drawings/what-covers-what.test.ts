import type { Scene, SceneBox } from '@dryfit/output';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arranged } from '../../packages/output/src/drawing/exploded/exploded.js';
import { inside } from '../../packages/output/src/drawing/exploded/flat.js';
import { isWood } from '../../packages/output/src/drawing/exploded/solid.js';
import { dot, minus, plus, times, type Vector } from '../../packages/output/src/drawing/exploded/vector.js';
import type { View } from '../../packages/output/src/drawing/exploded/view.js';
import { placeIn, placeOut, wayOut } from '../../packages/output/src/drawing/turn.js';
import { drawnFrom, random, sound, views } from './scenes.js';

type Body = ReturnType<typeof arranged>['bodies'][number];

/**
 * Looks through the picture at many places and compares what is painted there last with what a ray from the reader
 * meets first. Places so near an edge that they may go either way are passed over.
 */
function compare(scene: Scene, view: View, places: number): number {
  const { eye, bodies, order, whole } = arranged(scene, view);
  const centre = times(plus(whole.lo, whole.hi), 0.5);
  const reach = Math.hypot(...minus(whole.hi, whole.lo)) / 2 + 1;
  let compared = 0;
  for (let i = 0; i < places; i += 1) {
    // A sequence that fills the square evenly (golden ratio), so that no place is chosen by chance.
    const u = ((i * 0.754877666) % 1) * 2 - 1;
    const v = ((i * 0.569840296) % 1) * 2 - 1;
    const at = plus(plus(centre, times(eye.right, u * reach)), times(eye.up, v * reach));
    const met = firstMet(bodies, at, eye.toward, reach);
    const beside = [-NEAR, NEAR].flatMap((d) => [plus(at, times(eye.right, d)), plus(at, times(eye.up, d))]);
    const nearBy = beside.map((p) => firstMet(bodies, p, eye.toward, reach));
    if (nearBy.some((part) => part !== met)) continue;
    const flat = [dot(eye.right, at), -dot(eye.up, at)] as const;
    const painted = order.filter(({ hull }) => inside(hull, flat)).at(-1)?.owner.part.part;
    expect(painted, `${scene.title} at ${flat}, ${JSON.stringify(view)}`).toBe(met);
    if (met !== undefined) compared += 1;
  }
  return compared;
}

// Small against a saw kerf, large against the rounding of doubles.
const NEAR = 1e-3;

/**
 * The part whose wood a ray meets first. Wood begins and ends only where the ray crosses a plane that bounds some
 * part; so it is enough to look halfway between each crossing and the next.
 */
function firstMet(bodies: readonly Body[], at: Vector, toward: Vector, reach: number): string | undefined {
  const crossings = bodies
    .flatMap(planesOf)
    .map(({ normal, at: level }) => (level - dot(normal, at)) / dot(normal, toward))
    .filter((t) => Number.isFinite(t) && Math.abs(t) <= 2 * reach)
    .sort((a, b) => b - a);
  for (let i = 1; i < crossings.length; i += 1) {
    const half = ((crossings[i - 1] as number) + (crossings[i] as number)) / 2;
    const place = plus(at, times(toward, half));
    const met = bodies.find((body) => isWood(body.material, placeIn(body.part.turn, minus(place, body.shift))));
    if (met) return met.part.part;
  }
  return undefined;
}

function planesOf({
  material,
  shift,
  part: { turn },
}: Body): readonly { readonly normal: Vector; readonly at: number }[] {
  const axes: readonly Vector[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const square = [material.box, ...material.notches].flatMap(({ lo, hi }) =>
    axes.flatMap((normal) => [lo, hi].map((corner) => ({ normal, at: dot(normal, corner) }))),
  );
  const own = [...square, ...material.bevels];
  return own.map(({ normal, at }) => {
    const out = wayOut(turn, normal);
    return { normal: out, at: at + dot(out, placeOut(turn, [0, 0, 0])) + dot(out, shift) };
  });
}

test('the nearest part is painted over those behind it, in every example from many sides', async () => {
  let compared = 0;
  for (const { scene } of await sound()) {
    for (const view of [
      { turn: 30, tilt: 22, apart: 0.6 },
      { turn: -60, tilt: 40, apart: 0.2 },
      { turn: 200, tilt: -30, apart: 1 },
    ])
      compared += compare(scene, view, 60);
  }
  expect(compared).toBeGreaterThan(150);
});

/** Boxes that do not overlap, each a part; bars along all three axes, so that rings of them come by. */
const boxes: fc.Arbitrary<readonly SceneBox[]> = fc
  .array(
    fc.record({
      at: fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 })),
      axis: fc.constantFrom(0, 1, 2),
      long: fc.integer({ min: 2, max: 9 }),
    }),
    { minLength: 3, maxLength: 14 },
  )
  .map((bars) => {
    const kept: SceneBox[] = [];
    for (const { at, axis, long } of bars) {
      const lo = at.map((n) => n * 30) as unknown as Vector;
      const hi = at.map((n, i) => (n + (i === axis ? long : 1)) * 30) as unknown as Vector;
      const free = kept.every((other) =>
        [0, 1, 2].some(
          (i) => (hi[i] as number) <= (other.lo[i] as number) || (lo[i] as number) >= (other.hi[i] as number),
        ),
      );
      if (free) kept.push({ lo, hi });
    }
    return kept;
  });

const sceneOfBoxes = (all: readonly SceneBox[]): Scene => ({
  cabinet: 'Bars',
  title: 'Bars',
  units: 'mm',
  parts: all.map((box, i) => ({
    shape: `part bar ${i}`,
    label: `bar ${i}`,
    places: [],
    part: `bar ${i}`,
    attitude: 'level',
    material: 'board',
    grain: 'x',
    same: i,
    box,
    sizes: ['1', '1', '1'],
    bands: [],
    cuts: [],
  })),
  joints: [],
  findings: [],
});

test('so it is with bars laid any way, rings of them included', () => {
  fc.assert(
    fc.property(boxes, views, (all, view) => {
      compare(sceneOfBoxes(all), view, 40);
    }),
    { numRuns: 60 },
  );
});

test('three bars, each before the next in a ring, are cut so that each is painted right', () => {
  const ring: readonly SceneBox[] = [
    { lo: [0, 0, 60], hi: [300, 30, 90] },
    { lo: [0, 0, 0], hi: [30, 300, 30] },
    { lo: [240, 30, 0], hi: [270, 60, 300] },
    { lo: [60, 270, 30], hi: [90, 300, 330] },
    { lo: [30, 240, 270], hi: [330, 270, 300] },
  ];
  let compared = 0;
  for (let turn = 0; turn < 360; turn += 60)
    for (const tilt of [-50, -20, 20, 50]) compared += compare(sceneOfBoxes(ring), { turn, tilt, apart: 0 }, 80);
  expect(compared).toBeGreaterThan(150);
});

test('so it is in any cabinet, together and apart', async () => {
  await fc.assert(
    fc.asyncProperty(random, views, async (plan, view) => {
      const { result, scene } = await drawnFrom(plan);
      // Of two parts in one place neither is before the other.
      if (result.findings.some(({ code }) => code === 'parts-overlap')) return;
      compare(scene, view, 25);
    }),
    { numRuns: 25 },
  );
});
