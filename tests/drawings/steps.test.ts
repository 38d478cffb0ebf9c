import { type Scene, sceneSteps, stepDrawing, svgFile } from '@dryfit/output';
import { beforeAll, describe, expect, it } from 'vitest';
import { examples } from '../support/examples.js';
import { examineText } from '../support/read.js';
import { all, cross, hasClass, type Read, read, shapesIn, wordsPatch } from './paper.js';
import { type Drawn, drawn, sound } from './scenes.js';

interface Step {
  readonly name: string;
  readonly scene: Scene;
  readonly number: number;
  readonly root: Read;
}

let steps: readonly Step[];
beforeAll(async () => {
  const failing: Drawn[] = [];
  for (const { name, text } of examples('broken')) {
    const { results } = await examineText(text.replaceAll('"../', '"'));
    failing.push(...results.map((result) => drawn(name, result, 'mm')));
  }
  steps = [...(await sound()), ...failing].flatMap(drawnSteps);
});

function drawnSteps({ name, result, scene }: Drawn): readonly Step[] {
  const stepped = { ...scene, steps: sceneSteps(result) };
  return stepped.steps.flatMap((_, number) => {
    const drawing = stepDrawing(stepped, number);
    return drawing
      ? [{ name: `${name}, step ${number + 1}`, scene: stepped, number, root: read(svgFile(drawing)) }]
      : [];
  });
}

describe('the drawing of a step', () => {
  it('shows what is there and what comes, each once, and nothing else', () => {
    for (const { name, scene, number, root } of steps) {
      const step = scene.steps?.[number];
      const wanted = new Set([...(step?.placed ?? []), ...(step?.coming ?? []).map(({ part }) => part)]);
      const shown = shapesIn(root).filter((shape) => shape.startsWith('part '));
      expect(new Set(shown).size, name).toBe(shown.length);
      expect(shown.map((shape) => shape.slice('part '.length)).sort(), name).toEqual([...wanted].sort());
    }
    expect(steps.length).toBeGreaterThan(100);
  });

  it('has an arrow with words for every way that parts come', () => {
    for (const { name, scene, number, root } of steps) {
      const ways = new Set(scene.steps?.[number]?.coming.map(({ words }) => words));
      expect(all(root).filter((element) => hasClass(element, 'head')).length, name).toBeGreaterThanOrEqual(ways.size);
      const said = all(root).flatMap((element) => (hasClass(element, 'words') ? [element.text] : []));
      expect([...said].sort(), name).toEqual([...ways].sort());
    }
  });

  it('has words that neither run into each other nor off the paper', () => {
    for (const { name, root } of steps) {
      const [left = 0, top = 0, width = 0, height = 0] = (root.attributes.viewBox ?? '').split(' ').map(Number);
      const words = all(root)
        .filter(({ tag }) => tag === 'text')
        .map((element) => ({ text: element.text, patch: wordsPatch(element) }));
      for (const [i, a] of words.entries()) {
        const off =
          a.patch.left < left || a.patch.right > left + width || a.patch.top < top || a.patch.bottom > top + height;
        expect(off, `${name}: "${a.text}" leaves the paper`).toBe(false);
        const on = words.slice(i + 1).find((b) => cross(a.patch, b.patch));
        expect(on?.text, `${name}: on "${a.text}"`).toBeUndefined();
      }
    }
  });
});
