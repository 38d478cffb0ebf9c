import {
  elevation,
  exploded,
  hoverDrawing,
  type ScenePart,
  sceneOf,
  svgFile,
  toSvg,
  twinOf,
  USUAL_VIEW,
} from '@dryfit/output';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { all, cross, hasClass, patchOf, type Read, read, shapesIn, wordsPatch } from './paper.js';
import { broken, type Drawn, drawnFrom, random, sound, views } from './scenes.js';

let examples: readonly Drawn[];
let failing: readonly Drawn[];
beforeAll(async () => {
  examples = await sound();
  failing = await broken();
});

const VIEWS = [
  USUAL_VIEW,
  { turn: -40, tilt: 35, apart: 1 },
  { turn: 150, tilt: -20, apart: 0 },
  { turn: 0, tilt: 0, apart: 0.5 },
  { turn: 10, tilt: 90, apart: 0.5 },
];

/** Everything cut into a part, along its cant as well. */
const cutsOf = (part: ScenePart) => [...part.cuts, ...(part.along ?? [])];

/** Every drawing of a cabinet, by name. */
function drawings({ scene }: Drawn): readonly (readonly [string, string])[] {
  return [
    ...VIEWS.map((view, i) => [`exploded ${i}`, svgFile(exploded(scene, view))] as const),
    ['exploded in a narrow panel', svgFile(exploded(scene, USUAL_VIEW, { size: { width: 560, height: 700 } }))],
    ['exploded in a wide panel', svgFile(exploded(scene, USUAL_VIEW, { size: { width: 1600, height: 420 } }))],
    ['exploded tight', svgFile(exploded(scene, USUAL_VIEW, { tight: true }))],
    ...scene.parts.map(({ part }) => [part, svgFile(elevation(scene, part))] as const),
    ...scene.parts.map(({ part }) => [`${part}, small`, toSvg(hoverDrawing(scene, part))] as const),
  ];
}

/** Words of a drawing that run into each other, or off the paper. */
function tangled(svg: string): readonly string[] {
  const root = read(svg);
  const [left = 0, top = 0, width = 0, height = 0] = (root.attributes.viewBox ?? '').split(' ').map(Number);
  const words = all(root)
    .filter(({ tag }) => tag === 'text')
    .map((element) => ({ text: element.text, patch: wordsPatch(element) }));
  const off = words.filter(
    ({ patch }) => patch.left < left || patch.right > left + width || patch.top < top || patch.bottom > top + height,
  );
  const tangles = words.flatMap((a, i) =>
    words.slice(i + 1).flatMap((b) => (cross(a.patch, b.patch) ? [`"${a.text}" on "${b.text}"`] : [])),
  );
  return [...off.map(({ text }) => `"${text}" leaves the paper`), ...tangles];
}

/** All words of a drawing, line after line. */
const wordsOf = (svg: string): string =>
  all(read(svg))
    .flatMap(({ tag, text }) => (tag === 'text' ? [text] : []))
    .join(' ');

/** What the outlines of a kind cover: left, right, top and bottom of each. */
const outlines = (root: Read, kind: string): readonly (readonly [number, number, number, number])[] =>
  all(root)
    .filter((one) => one.tag === 'polygon' && hasClass(one, kind))
    .map(patchOf)
    .map(({ left, right, top, bottom }) => [left, right, top, bottom]);

/** Those of one list that have no counterpart in another; figures in drawings are rounded to the hundredth. */
const without = (some: readonly (readonly number[])[], others: readonly (readonly number[])[]) =>
  some.filter((a) => !others.some((b) => a.every((n, i) => Math.abs(n - (b[i] as number)) < 0.03)));

describe('every drawing of every example', () => {
  test('is well-formed, names each shape once, and none that is not in the scene', () => {
    for (const one of [...examples, ...failing]) {
      const known = new Set([
        ...one.scene.parts.flatMap((part) => [part.shape, ...cutsOf(part).map(({ shape }) => shape)]),
        ...one.scene.joints.map(({ shape }) => shape),
        ...(one.scene.marks ?? []).map(({ shape }) => shape),
      ]);
      for (const [name, svg] of drawings(one)) {
        const shapes = shapesIn(read(svg));
        expect(new Set(shapes).size, `${one.name}, ${name}`).toBe(shapes.length);
        expect(shapes.filter((shape) => !known.has(shape))).toEqual([]);
      }
    }
  });

  test('together show every shape there is', () => {
    let count = 0;
    for (const { name, scene } of [...examples, ...failing]) {
      const shown = new Set(scene.parts.flatMap(({ part }) => shapesIn(read(toSvg(elevation(scene, part))))));
      const wanted = [
        ...scene.parts.flatMap((part) => (part.box ? [part.shape, ...part.cuts.map(({ shape }) => shape)] : [])),
        ...scene.joints.flatMap(({ shape, entering, host }) =>
          scene.parts.some(({ part, box }) => box && (part === entering || part === host)) ? [shape] : [],
        ),
      ];
      expect(
        wanted.filter((shape) => !shown.has(shape)),
        name,
      ).toEqual([]);
      count += wanted.length;
    }
    expect(count).toBeGreaterThan(500);
  });

  test('shows every part exploded and every cut of it, in hidden lines where it opens away from the reader', () => {
    for (const { scene } of examples) {
      const root = read(toSvg(exploded(scene, { ...USUAL_VIEW, apart: 1 })));
      const shown = new Set(shapesIn(root));
      expect(scene.parts.filter(({ shape }) => !shown.has(shape))).toEqual([]);
      // Reader to the right, in front and above: those sides look at them.
      const seen = new Set(['right', 'front', 'top']);
      for (const { kind, shape, surface, mouth, fromToe } of scene.parts.flatMap(({ cuts }) => cuts)) {
        if (['bevel', 'notch', 'cant'].includes(kind) || fromToe !== undefined) continue;
        const [group] = all(root).filter(({ attributes }) => attributes['data-shape'] === shape);
        const kinds = group?.children.flatMap(({ attributes }) => attributes.class ?? []);
        // A groove that runs out may be seen at its end as well.
        const wanted = seen.has(surface) ? 'opening' : mouth ? 'behind' : undefined;
        if (wanted) expect(kinds, shape).toEqual([`${wanted} ${kind}`]);
        else expect(kinds?.length, shape).toBe(1);
      }
    }
  });

  test('shows in hidden lines what is seen from the other side, mirrored, and can leave it out', () => {
    let compared = 0;
    for (const { name, scene } of [...examples, ...failing]) {
      for (const view of VIEWS.filter(({ tilt }) => Math.abs(tilt) < 90)) {
        const behind = { turn: view.turn + 180, tilt: -view.tilt, apart: view.apart };
        const [here, there] = [view, behind].map((one) => read(toSvg(exploded(scene, one)))) as [Read, Read];
        const [width = 0] = (here.attributes.viewBox ?? '').split(' ').slice(2).map(Number);
        const mirrored = outlines(there, 'opening').map((box) => [width - box[1], width - box[0], box[2], box[3]]);
        const hidden = outlines(here, 'behind');
        expect([...without(hidden, mirrored), ...without(mirrored, hidden)], name).toEqual([]);
        expect(hidden).toHaveLength(mirrored.length);
        compared += mirrored.length;
        const open = read(toSvg(exploded(scene, view, { visibleOnly: true })));
        expect(outlines(open, 'behind')).toEqual([]);
        expect(outlines(open, 'opening')).toEqual(outlines(here, 'opening'));
      }
    }
    expect(compared).toBeGreaterThan(500);
  });

  test('has words that neither run into each other nor off the paper', () => {
    for (const one of [...examples, ...failing]) {
      for (const [name, svg] of drawings(one)) expect(tangled(svg), `${one.name}, ${name}`).toEqual([]);
    }
  });

  test('has room for the words at a marked place, however long they are', () => {
    const marked = failing.filter(({ scene }) => (scene.marks ?? []).length > 0);
    expect(marked.length).toBeGreaterThan(2);
    for (const { name, scene } of marked) {
      const marks = scene.marks?.map((mark) => ({ ...mark, words: `${mark.words}, ${'and no less '.repeat(60)}` }));
      for (const { part } of scene.parts) {
        const run = tangled(toSvg(elevation({ ...scene, marks }, part)));
        expect(
          run.filter((words) => words.endsWith('leaves the paper')),
          name,
        ).toEqual([]);
      }
    }
  });

  test('says in words which edge is the datum, and hatches it', () => {
    for (const { scene } of examples) {
      for (const part of scene.parts) {
        const root = read(toSvg(elevation(scene, part.part)));
        const datums = new Set(part.cuts.flatMap(({ measured }) => measured?.datum ?? []));
        for (const face of all(root).filter((one) => one.attributes['data-face'] !== undefined)) {
          const words = all(face).map(({ text }) => text);
          for (const datum of datums)
            expect(
              words.some((text) => text.startsWith(`datum: ${datum} `)),
              part.part,
            ).toBe(true);
          expect(all(face).filter((one) => hasClass(one, 'hatch'))).toHaveLength(datums.size);
        }
      }
    }
  });

  test('has a table that says the same', () => {
    for (const { scene } of examples) {
      const twin = twinOf(scene);
      const shapes = scene.parts.flatMap((part) => [part.shape, ...cutsOf(part).map(({ shape }) => shape)]);
      expect(twin.rows.map(({ shape }) => shape)).toEqual(shapes);
      expect(twin.rows.every(({ cells }) => cells.length === twin.headings.length)).toBe(true);
      for (const part of scene.parts) {
        const figures = [...part.cuts.flatMap(({ measured }) => measured ?? []), ...(part.along ?? [])].flatMap(
          ({ fromDatum, across }) => [fromDatum, across],
        );
        const words = all(read(toSvg(elevation(scene, part.part)))).map(({ text }) => text);
        const rows = twinOf(scene, part.part)
          .rows.map(({ cells }) => cells.join(' '))
          .join('\n');
        for (const figure of figures) {
          expect(
            words.some((text) => text.includes(figure)),
            `${figure} of ${part.part}`,
          ).toBe(true);
          expect(rows).toContain(`${figure} from`);
        }
      }
    }
  });

  test('warns in words when there are errors', () => {
    const wrong = failing.filter(({ result }) => result.findings.some(({ severity }) => severity === 'error'));
    expect(wrong.length).toBeGreaterThan(10);
    for (const one of wrong) {
      for (const [name, svg] of drawings(one))
        expect(
          name.endsWith('small') || wordsOf(svg).includes('do not cut or mill from this drawing'),
          `${one.name}, ${name}`,
        ).toBe(true);
    }
  });
});

test('any cabinet from anywhere is drawn, well-formed, each shape once, its names clear of each other', async () => {
  await fc.assert(
    fc.asyncProperty(random, views, async (plan, view) => {
      const { scene } = await drawnFrom(plan);
      const root = read(toSvg(exploded(scene, view)));
      const shapes = shapesIn(root);
      expect(new Set(shapes).size).toBe(shapes.length);
      expect(tangled(toSvg(exploded(scene, view)))).toEqual([]);
      const [left = 0, top = 0, width = 0, height = 0] = (root.attributes.viewBox ?? '').split(' ').map(Number);
      for (const polygon of all(root).filter(({ tag }) => tag === 'polygon')) {
        const patch = patchOf(polygon);
        expect(
          patch.left >= left && patch.top >= top && patch.right <= left + width && patch.bottom <= top + height,
        ).toBe(true);
      }
      for (const { part } of scene.parts) expect(tangled(toSvg(elevation(scene, part)))).toEqual([]);
    }),
    { numRuns: 30 },
  );
});

test('a name cannot become markup', () => {
  const [{ scene } = { scene: undefined }] = examples;
  if (!scene) throw new Error('no example');
  const evil = '</svg><script>"&\u0000\'';
  const named = {
    ...scene,
    title: evil,
    parts: scene.parts.map((part) => ({ ...part, part: `${evil}${part.part}`, label: evil, material: evil })),
  };
  for (const svg of [
    toSvg(exploded(named, USUAL_VIEW)),
    ...named.parts.map(({ part }) => svgFile(elevation(named, part))),
  ]) {
    expect(all(read(svg)).some(({ tag }) => tag === 'script')).toBe(false);
  }
});

test('the same scene is drawn the same each time', () => {
  for (const { result, scene } of examples) {
    const again = sceneOf(result, result.findings, { units: scene.units });
    expect(toSvg(exploded(again, USUAL_VIEW))).toBe(toSvg(exploded(scene, USUAL_VIEW)));
    // What a panel gets has been through JSON.
    const sent = JSON.parse(JSON.stringify(scene)) as typeof scene;
    for (const { part } of scene.parts) expect(toSvg(elevation(sent, part))).toBe(toSvg(elevation(scene, part)));
  }
});
