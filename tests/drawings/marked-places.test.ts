import { elevation, exploded, type SceneMark, toSvg, twinOf, USUAL_VIEW } from '@dryfit/output';
import { beforeAll, describe, expect, test } from 'vitest';
import { all, hasClass, patchOf, type Read, read } from './paper.js';
import { broken, type Drawn, sound } from './scenes.js';

let marked: readonly Drawn[];
beforeAll(async () => {
  marked = (await broken()).filter(({ scene }) => (scene.marks ?? []).length > 0);
});

const groupOf = (root: Read, { shape }: SceneMark): Read | undefined =>
  all(root).find(({ attributes }) => attributes['data-shape'] === shape);

const crossOf = (group: Read | undefined): readonly [number, number] => {
  const cross = group?.children.find((child) => hasClass(child, 'cross'));
  if (!cross) throw new Error('there is no cross');
  const { left, right, top, bottom } = patchOf(cross);
  return [(left + right) / 2, (top + bottom) / 2];
};

describe('places that findings speak of', () => {
  test('are there for cuts that meet, parts in each other’s way and connectors that bind', () => {
    const codes = new Set(marked.flatMap(({ scene }) => scene.findings.map(({ code }) => code)));
    for (const code of ['slots-collide', 'parts-overlap', 'connector-binds']) expect(codes).toContain(code);
  });

  test('are marked with a cross in both drawings, in words beside it or at another like it, and in the table', () => {
    for (const { name, scene } of marked) {
      const whole = read(toSvg(exploded(scene, USUAL_VIEW)));
      const rows = twinOf(scene).rows;
      for (const mark of scene.marks ?? []) {
        const [part = ''] = mark.parts;
        const square = read(toSvg(elevation(scene, part)));
        for (const root of [whole, square]) {
          const group = groupOf(root, mark);
          expect(() => crossOf(group), `${name}, ${mark.shape}`).not.toThrow();
          expect(group?.attributes['aria-label']).toBe(mark.label);
          const said = all(root).filter((one) => hasClass(one, 'words') && one.text === mark.words);
          expect(said.length, `${name}, ${mark.words}`).toBeGreaterThan(0);
        }
        expect(rows.find(({ shape }) => shape === mark.shape)?.cells[1]).toContain(mark.words);
      }
    }
  });

  test('lie in the part square on where they lie in the cabinet', () => {
    let compared = 0;
    for (const { name, scene } of marked)
      for (const mark of scene.marks ?? []) {
        const part = scene.parts.find((one) => one.part === mark.parts[0]);
        if (!part?.box || part.turn) continue;
        const root = read(toSvg(elevation(scene, part.part)));
        const outline = all(root).find((one) => hasClass(one, 'outline') && hasClass(one, 'face'));
        if (!outline) throw new Error(`${part.part} has no outline`);
        const face = patchOf(outline);
        const [x, y] = crossOf(groupOf(root, mark));
        const share = (i: 0 | 1 | 2): number => {
          const { lo, hi } = part.box as NonNullable<typeof part.box>;
          return ((mark.ends[0][i] + mark.ends[1][i]) / 2 - lo[i]) / (hi[i] - lo[i]);
        };
        // Uprights and facing parts stand as they stand; a level part is seen with its rear upward.
        const up = part.attitude === 'level' ? share(1) : share(2);
        const over = part.attitude === 'upright' ? share(1) : share(0);
        const [across, down] = [(x - face.left) / (face.right - face.left), (y - face.top) / (face.bottom - face.top)];
        expect(1 - down, `${name}, ${mark.shape}`).toBeCloseTo(up, 2);
        // Which way is right on paper depends on the face that is shown.
        expect(Math.min(Math.abs(across - over), Math.abs(1 - across - over)), `${name}, ${mark.shape}`).toBeLessThan(
          0.01,
        );
        compared += 1;
      }
    expect(compared).toBeGreaterThan(10);
  });

  test('are none where nothing is wrong', async () => {
    for (const { scene } of await sound()) {
      const errors = scene.findings.filter(({ severity }) => severity === 'error');
      if (errors.length === 0) expect(scene.marks ?? []).toEqual([]);
    }
  });
});
