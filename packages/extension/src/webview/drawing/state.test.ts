import type { Scene } from '@dryfit/output';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxOf, seen } from './box.js';
import { keyAfter, keyOn } from './keys.js';
import { type Act, act, FARTHEST, NEAREST, restored, START, sheetFor, stepOf, type View, WHOLE } from './state.js';

const share = fc.double({ min: -3, max: 3, noNaN: true });
const anyAct: fc.Arbitrary<Act> = fc.oneof(
  fc.record({ do: fc.constant('zoom' as const), by: fc.double({ min: 0.1, max: 10, noNaN: true }) }),
  fc.record({ do: fc.constant('move' as const), x: share, y: share }),
  fc.record({ do: fc.constant('turn' as const), turn: fc.integer({ min: -720, max: 720 }), tilt: fc.integer() }),
  fc.record({ do: fc.constant('pull' as const), apart: share }),
  fc.record({ do: fc.constant('part' as const), part: fc.constantFrom('lh', 'rh', 'top') }),
  fc.record({ do: fc.constant('show' as const), shows: fc.constantFrom('part' as const, 'cabinet' as const) }),
  fc.constant({ do: 'whole' as const }),
);

test('whatever a reader does, the drawing is not lost', () => {
  fc.assert(
    fc.property(fc.array(anyAct), (acts) => {
      const view = acts.reduce(act, START);
      for (const { zoom, x, y } of Object.values(view.frames)) {
        expect(zoom).toBeGreaterThanOrEqual(FARTHEST);
        expect(zoom).toBeLessThanOrEqual(NEAREST);
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
        expect(Math.max(x, y)).toBeLessThanOrEqual(1);
      }
      expect(Math.abs(view.stance.turn)).toBeLessThanOrEqual(180);
      expect(Math.abs(view.stance.tilt)).toBeLessThanOrEqual(90);
      expect(view.stance.apart).toBeGreaterThanOrEqual(0);
      expect(view.stance.apart).toBeLessThanOrEqual(1);
    }),
  );
});

test('what is kept and brought back is the same, and rubbish is made good', () => {
  fc.assert(
    fc.property(fc.array(anyAct), (acts) => {
      const view = acts.reduce(act, START);
      expect(restored(JSON.parse(JSON.stringify(view)))).toEqual(view);
    }),
  );
  const rubbish = { frames: { cabinet: { zoom: Number.NaN, x: 'left' } }, stance: { tilt: 1e9 } } as unknown as View;
  expect(restored(rubbish).frames).toEqual({ cabinet: WHOLE, part: WHOLE });
  expect(restored(rubbish).stance.tilt).toBe(90);
});

test('going nearer keeps the point under the pointer where it is', () => {
  const box = [10, 20, 400, 300] as const;
  const pointAt = (view: View, at: { x: number; y: number }) => {
    const [left = 0, top = 0, width = 0, height = 0] = seen(box, view.frames.cabinet).split(' ').map(Number);
    return [left + at.x * width, top + at.y * height];
  };
  const near = act(START, { do: 'zoom', by: 2 });
  fc.assert(
    fc.property(fc.double({ min: 0.3, max: 0.7, noNaN: true }), fc.double({ min: 1, max: 3, noNaN: true }), (x, by) => {
      const at = { x, y: 1 - x };
      const [before, after] = [pointAt(near, at), pointAt(act(near, { do: 'zoom', by, at }), at)];
      expect(after[0]).toBeCloseTo(before[0] as number, 1);
      expect(after[1]).toBeCloseTo(before[1] as number, 1);
    }),
  );
});

test('all of a drawing is what it says it takes up', () => {
  const element = { tag: 'svg', attributes: { viewBox: '-5 -6 70 80' }, children: [] };
  expect(seen(boxOf(element), WHOLE)).toBe('-5 -6 70 80');
});

test('the two drawings are framed apart, and another part is seen whole', () => {
  const near = act(START, { do: 'zoom', by: 4 });
  const part = act(near, { do: 'part', part: 'lh' });
  expect(part.frames).toEqual({ cabinet: { zoom: 4, x: 0.5, y: 0.5 }, part: WHOLE });
  const closer = act(part, { do: 'zoom', by: 3 });
  expect(act(closer, { do: 'part', part: 'lh' }).frames.part.zoom).toBe(3);
  expect(act(closer, { do: 'part', part: 'rh' }).frames.part).toEqual(WHOLE);
  expect(act(closer, { do: 'show', shows: 'cabinet' }).frames.cabinet.zoom).toBe(4);
});

describe('keys', () => {
  const press = (key: string, shiftKey = false, view = START) => {
    const done = keyOn({ key, shiftKey }, view);
    return done === undefined ? undefined : act(view, done);
  };

  test('plus, minus and nought go nearer, farther, and back to all of it', () => {
    expect(press('+')?.frames.cabinet.zoom).toBe(1.25);
    expect(press('-')?.frames.cabinet.zoom).toBe(0.8);
    expect(press('0', false, act(START, { do: 'zoom', by: 3 }))?.frames.cabinet).toEqual(WHOLE);
  });

  test('arrows slide, and with Shift turn a whole cabinet but not a part', () => {
    expect(press('ArrowRight')?.frames.cabinet.x).toBeCloseTo(0.6);
    expect(press('ArrowRight', true)?.stance.turn).toBe(START.stance.turn + 10);
    const part = act(START, { do: 'part', part: 'lh' });
    expect(press('ArrowRight', true, part)?.stance).toEqual(START.stance);
    expect(press('ArrowRight', true, part)?.frames.part.x).toBeCloseTo(0.6);
  });

  test('other keys are left to the page', () => {
    expect(press('Tab')).toBeUndefined();
    expect(press('a')).toBeUndefined();
  });

  test('go from shape to shape, round and round', () => {
    const all = ['a', 'b', 'c'];
    expect(keyAfter(all, 'c', 'ArrowRight')).toBe('a');
    expect(keyAfter(all, 'a', 'ArrowUp')).toBe('c');
    expect(keyAfter(all, 'b', 'Home')).toBe('a');
    expect(keyAfter(all, 'b', 'End')).toBe('c');
    expect(keyAfter(all, 'b', 'Enter')).toBeUndefined();
  });
});

describe('the steps of a glue-up', () => {
  const scene = (count: number) =>
    ({
      steps: Array.from({ length: count }, () => ({ label: '', notes: [], coming: [], placed: [] })),
    }) as unknown as Scene;

  test('are drawn one at a time, and left again', () => {
    const first = act(START, { do: 'step', step: 0 });
    expect([stepOf(scene(3), START), stepOf(scene(3), first)]).toEqual([undefined, 0]);
    expect(stepOf(scene(3), act(first, { do: 'step', step: undefined }))).toBeUndefined();
  });

  test('give way to what the text has left of them, and to a part drawn alone', () => {
    const third = act(START, { do: 'step', step: 2 });
    expect([stepOf(scene(3), third), stepOf(scene(2), third), stepOf(scene(0), third)]).toEqual([2, 1, undefined]);
    expect(stepOf(scene(3), act(third, { do: 'part', part: 'lh' }))).toBeUndefined();
  });

  test('are found again when the page is', () => {
    expect(restored({ step: 1 }).step).toBe(1);
    expect(restored({ step: 'one' as unknown as number }).step).toBeUndefined();
  });
});

test('a sheet has the shape of what it fills, and never less room than a picture between its names needs', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 4000 }), fc.integer({ min: 1, max: 4000 }), (width, height) => {
      const sheet = sheetFor({ width, height });
      expect(sheet.width / sheet.height).toBeCloseTo(width / height, 6);
      expect(sheet.width).toBeGreaterThanOrEqual(559.999);
      // Words are 14 high on the sheet: on the screen no more than 12.
      expect((14 * width) / sheet.width).toBeLessThanOrEqual(12.001);
    }),
  );
});
