import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cut, FittedJoint, FittedPart, Point } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { type Axis, axisOf, type Side } from '../spec/sides.js';
import { type CutBody, cutBodies } from './cuts.js';
import { nearCuts } from './near.js';
import { rowsComeNear } from './rows.js';

const source = { uri: 'test:a.joinery', start: 0, end: 1 };
const mm = Rational.of;

interface Row {
  readonly surface: Side;
  /** Place of the row in the part, mm, and of its holes along the run. */
  readonly at: Record<Axis, number>;
  readonly steps: readonly number[];
}

/** An upright panel, 400 deep and 600 high, with rows of holes along its height. */
function panel(rows: readonly Row[]): FittedPart {
  const cuts = rows.flatMap(({ surface, at, steps }, row) =>
    steps.map((step, i): Cut => {
      const centre: Point = { x: mm(at.x), y: mm(at.y), z: mm(at.z + step) };
      const [diameter, depth] = [mm(8), mm(10)];
      const length = { value: 8, error: 0 };
      const slot = `${row} ${i}`;
      return {
        kind: 'hole',
        slot,
        surface,
        centre,
        run: 'z',
        diameter,
        width: diameter,
        depth,
        length,
        joint: `${row}`,
        source,
      };
    }),
  );
  const box = { lo: { x: mm(0), y: mm(0), z: mm(0) }, hi: { x: mm(18), y: mm(400), z: mm(600) } };
  return {
    id: 'panel',
    kind: 'panel',
    attitude: 'upright',
    material: 'board',
    source,
    box,
    extent: box.hi,
    grain: 'z',
    bands: [],
    cuts,
    same: 0,
  };
}

/** The joint of a row, as far as its cuts ask for it. */
const jointOf = (id: string): FittedJoint =>
  ({
    id,
    statement: id,
    entering: 'shelf',
    host: 'panel',
    enteringSide: 'left',
    hostSide: 'right',
    halves: [{ part: 'panel', role: 'face', slots: [] }],
  }) as unknown as FittedJoint;

const row = fc.record({
  surface: fc.constantFrom<Side>('left', 'right', 'front', 'rear'),
  at: fc.record({
    x: fc.integer({ min: 0, max: 18 }),
    y: fc.integer({ min: 0, max: 400 }),
    z: fc.integer({ min: 0, max: 300 }),
  }),
  steps: fc
    .uniqueArray(fc.integer({ min: 0, max: 300 }), { minLength: 1, maxLength: 6 })
    .map((steps) => steps.sort((a, b) => a - b)),
});
const rows = fc.array(row, { maxLength: 5 }).map((list) =>
  list.map((one) => {
    // A hole's mouth lies in its surface.
    const axis = axisOf(one.surface);
    const mouth = { left: 0, right: 18, front: 0, rear: 400, bottom: 0, top: 600 }[one.surface];
    return { ...one, at: { ...one.at, [axis]: mouth } };
  }),
);

describe('rows of cuts', () => {
  it('are told to come near wherever two of their cuts do', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 60 }), (list, asked) => {
        const part = panel(list);
        const bodies = cutBodies(part, mm(18), jointOf);
        const boxesNear = bodies.some((a, i) =>
          bodies.slice(i + 1).some((b) => a.row !== b.row && within(a, b, asked)),
        );
        const told = rowsComeNear(part, mm(18), jointOf, asked);
        if (boxesNear) expect(told).toBe(true);
        if (!told) expect([...nearCuts(bodies, asked)]).toEqual([]);
      }),
    );
  });

  it('come near side by side, not far up the panel, and not alone', () => {
    const steps = [0, 32, 64];
    const low: Row = { surface: 'left', at: { x: 0, y: 100, z: 40 }, steps };
    const high: Row = { surface: 'left', at: { x: 0, y: 100, z: 400 }, steps };
    const beside: Row = { surface: 'left', at: { x: 0, y: 112, z: 40 }, steps };
    expect(rowsComeNear(panel([low, high]), mm(18), jointOf, 6)).toBe(false);
    expect(rowsComeNear(panel([low, beside]), mm(18), jointOf, 6)).toBe(true);
    expect(rowsComeNear(panel([low]), mm(18), jointOf, 6)).toBe(false);
  });
});

const within = (a: CutBody, b: CutBody, asked: number): boolean =>
  ([0, 1, 2] as const).every((k) => a.bounds.lo[k] - b.bounds.hi[k] < asked && b.bounds.lo[k] - a.bounds.hi[k] < asked);
