import {
  type Attitude,
  type FitResult,
  isFace,
  markedTogether,
  type Orientation,
  opposite,
  orientationOf,
  planWork,
  type Side,
} from '@dryfit/engine';
import type { Mark } from '@dryfit/output';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { LAID, triangle } from '../../packages/output/src/sheet/laid.js';
import { markingPages } from '../../packages/output/src/sheet/marking-pages.js';
import {
  markedWays,
  orientationMarks,
  type Seen,
  seenOnCard,
  type Way,
} from '../../packages/output/src/sheet/marks.js';
import { Pen } from '../../packages/output/src/sheet/page.js';
import { exampleText } from '../support/examples.js';
import { examineText } from '../support/read.js';
import { cross, OUT } from '../support/vectors.js';

/** Which side somebody has at the right hand who looks at a face with another side upward. */
function atTheRight(face: Side, up: Side): Side | undefined {
  const right = cross(OUT[opposite(face)], OUT[up]);
  return (Object.keys(OUT) as Side[]).find((side) => OUT[side].every((n, i) => n === (right[i] ?? 0) + 0));
}
/** A drawing shows a piece from outside, and not its mirror image. */
function expectSeen({ face, edges }: Seen): void {
  expect([face, edges.right]).toEqual([face, atTheRight(face, edges.up)]);
  expect([edges.left, edges.down]).toEqual([opposite(edges.right), opposite(edges.up)]);
}

const NAMES = ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'];
const cabinets = new Map<string, readonly FitResult[]>();
beforeAll(async () => {
  for (const name of NAMES) cabinets.set(name, (await examineText(exampleText(`${name}.joinery`))).results);
});
const all = () => [...cabinets.values()].flat();
const first = (name: string): FitResult => {
  const [result] = cabinets.get(name) ?? [];
  if (!result) throw new Error(`no ${name}`);
  return result;
};

test.each(['upright', 'level', 'facing'] as const)(
  '%s parts lie as they are, not mirrored, with a face up',
  (attitude: Attitude) => {
    expect(isFace(LAID[attitude].face, attitude)).toBe(true);
    expectSeen(LAID[attitude]);
  },
);

describe('face side and face edge', () => {
  it('are those of a cabinet worked by hand', () => {
    const { fit } = first('periodicals');
    const told = Object.fromEntries(
      fit.parts.map((part) => {
        const { faces, edges } = orientationOf(fit, part);
        return [part.id, [faces.map(({ side }) => side), edges.map(({ side }) => side)]];
      }),
    );
    // Slots in the ends of top, base and shelf are 9.5 from the face that is held in place; the sides are milled inside.
    expect(told).toEqual({
      lh: [['right'], ['rear']],
      rh: [['left'], ['rear']],
      top: [['top'], ['rear']],
      base: [['bottom'], ['rear']],
      shelf: [['bottom'], ['rear']],
      back: [[], []],
    });
  });

  it('are what slots lie the told distances from, by their places in the cabinet', () => {
    const measured = { edges: 0, faces: 0 };
    for (const { fit } of all())
      for (const part of fit.parts) {
        const { box } = part;
        if (!box || part.turn) continue;
        const orientation = orientationOf(fit, part);
        const off = (side: Side, at: readonly number[]): number => {
          const i = OUT[side].findIndex((n) => n !== 0);
          const axis = (['x', 'y', 'z'] as const)[i] ?? 'x';
          const plane = (OUT[side][i] ?? 0) > 0 ? box.hi[axis] : box.lo[axis];
          return Math.abs(plane.toNumber() - (at[i] ?? 0));
        };
        for (const { id, halves } of fit.joints)
          for (const half of halves) {
            if (half.part !== part.id || half.turn || half.role === 'mitre') continue;
            const edge = orientation.edges.find(({ joints }) => joints.includes(id));
            const face = orientation.faces.find(({ joints }) => joints.includes(id));
            for (const { centre, fromDatum } of half.slots) {
              const at = [centre.x, centre.y, centre.z].map((one) => one.toNumber());
              // Bands come later where a cabinet is milled before them.
              if (fit.milled === 'after banding') {
                expect(edge && off(edge.side, at), `${id}, ${part.id}: edge`).toBeCloseTo(fromDatum.toNumber(), 6);
                measured.edges++;
              }
              if (half.role === 'edge') {
                expect(face && off(face.side, at), `${id}, ${part.id}: face`).toBeCloseTo(half.across.toNumber(), 6);
                measured.faces++;
              }
            }
          }
      }
    expect(Math.min(measured.edges, measured.faces)).toBeGreaterThan(50);
  });

  it('show in a card as the piece lies at its fence', async () => {
    let seen = 0;
    for (const result of all()) {
      const plan = await planWork([{ result, count: 1 }]);
      for (const { operations, setting } of plan.setUps)
        for (const operation of operations) {
          if (operation.half.turn || operation.half.role === 'mitre') continue;
          expectSeen(seenOnCard(operation, setting));
          seen++;
        }
    }
    expect(seen).toBeGreaterThan(20);
  });
});

describe('marks in a drawing', () => {
  const piece = { x: 20, y: 20, width: 60, height: 60 };
  const SIDES: { readonly [W in Way]: Side } = LAID.level.edges;
  const drawn = (faces: readonly Side[], edges: readonly Side[]) => {
    const pen = new Pen();
    const orientation: Orientation = {
      faces: faces.map((side) => ({ side, joints: [] })),
      edges: edges.map((side) => ({ side, joints: [] })),
      alongCant: [],
    };
    orientationMarks(pen, piece, orientation, LAID.level);
    return {
      marks: pen.marks,
      words: pen.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
      orientation,
    };
  };

  it.each(['left', 'right', 'up', 'down'] as const)(
    'stand within the piece, the vee with its point at the %s edge',
    (way) => {
      const { marks, words, orientation } = drawn(['top'], [SIDES[way]]);
      expect(markedWays(orientation, LAID.level)).toEqual([way]);
      expect(words.sort()).toEqual(['face edge', 'face side']);
      const lines = marks.filter((mark): mark is Extract<Mark, { kind: 'line' }> => mark.kind === 'line');
      const ends = lines.flatMap(({ from, to }) => [from, to]);
      for (const [x, y] of ends)
        expect(x >= 20 - 1e-9 && x <= 80 + 1e-9 && y >= 20 - 1e-9 && y <= 80 + 1e-9).toBe(true);
      const onEdge = ends.filter(
        ([x, y]) => Math.abs({ left: x - 20, right: x - 80, up: y - 20, down: y - 80 }[way]) < 1e-9,
      );
      // Two strokes of the vee meet in its point; the tail of the loop runs out beside it.
      expect(new Set(onEdge.map(String)).size).toBe(2);
    },
  );

  it('tell a face that is seen from its other side, and both', () => {
    expect(drawn(['bottom'], ['rear']).words).toContain('face side, hidden');
    expect(drawn(['bottom', 'top'], ['rear']).words).toContain('face side, both');
    expect(drawn([], ['rear', 'left']).words).toEqual(['face edge', 'face edge']);
    expect(drawn([], []).marks).toEqual([]);
  });
});

describe('the triangle', () => {
  /** Heights at which a part's share of it runs out over its left and over its right edge, as told from the top. */
  function shares(count: number): readonly { readonly left: string; readonly right: string }[] {
    return Array.from({ length: count }, (_, i) => {
      const pen = new Pen();
      triangle(pen, { x: 0, y: 0, width: 10, height: 10 }, [i / count, (i + 1) / count]);
      const ends = pen.marks.flatMap((mark) => (mark.kind === 'line' ? [mark.from, mark.to] : []));
      const at = (x: number) =>
        ends
          .filter((end) => Math.abs(end[0] - x) < 1e-9)
          .map((end) => end[1].toFixed(6))
          .sort()
          .join(' ');
      return { left: at(0), right: at(10) };
    });
  }
  const orders = (n: number): number[][] =>
    n === 0
      ? [[]]
      : orders(n - 1).flatMap((order) =>
          Array.from({ length: n }, (_, at) => [...order.slice(0, at), n - 1, ...order.slice(at)]),
        );

  it.each([2, 3, 4, 5])('over %i parts runs on from one to the next in their one order only', (count) => {
    const parts = shares(count);
    const runsOn = (order: readonly number[]) =>
      order.every((one, i) => {
        const [here, next] = [parts[one], parts[order[i + 1] ?? -1]];
        return i === count - 1 ? here?.right === '' : here?.right !== '' && here?.right === next?.left;
      }) && parts[order[0] ?? 0]?.left === '';
    expect(orders(count).filter(runsOn)).toEqual([Array.from({ length: count }, (_, i) => i)]);
  });

  it('is one over sides, one over top and base, one over like shelves', () => {
    expect(markedTogether(first('bookcase').fit).map(({ parts }) => parts)).toEqual([
      ['lh', 'rh'],
      ['divider'],
      ['base', 'top'],
      ['lshelf 1', 'lshelf 2', 'lshelf 3'],
      ['rshelf 1', 'rshelf 2', 'rshelf 3'],
      ['back'],
    ]);
  });
});

test('every part that is milled is drawn and told once for cabinets that are marked alike', () => {
  let told = 0;
  for (const name of NAMES) {
    const results = (cabinets.get(name) ?? []).slice(0, 1);
    const items = results.map((result) => ({ result, count: 2 }));
    const pages = markingPages({ title: ['job'], items: [...items, ...items], errors: 1 }, 'A4', { units: 'mm' });
    expect(pages.length).toBeGreaterThan(0);
    for (const { marks } of pages)
      expect(marks.some((mark) => mark.kind === 'text' && mark.text.includes('DO NOT MILL'))).toBe(true);
    const bold = pages.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' && mark.bold ? [mark.text] : [])),
    );
    for (const { fit } of results)
      for (const part of fit.parts) {
        const isMilled = fit.joints.some(({ halves }) =>
          halves.some((half) => half.part === part.id && half.slots.length > 0),
        );
        if (!isMilled) continue;
        expect(bold.filter((text) => text === part.id)).toEqual([part.id]);
        told++;
      }
  }
  expect(told).toBeGreaterThan(20);
});
