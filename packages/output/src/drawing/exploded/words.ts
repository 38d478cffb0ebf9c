import type { Side } from '@dryfit/engine';
import { type Element, element } from '../element.js';
import type { SceneBox } from '../scene.js';
import { figure } from './paint.js';
import { dot, normalOf, plus, times, type Vector } from './vector.js';
import { type Eye, type Flat, onPaper } from './view.js';

const AROUND: readonly Side[] = ['front', 'right', 'rear', 'left'];
const GAP = 18;

/** Which way the cabinet stands, in words at the feet of the sides that look at the reader. */
export function wordsAround(
  box: SceneBox,
  eye: Eye,
  sheet: (p: Flat) => Flat,
  lowest: number,
  room: { readonly left: number; readonly right: number },
): readonly Element[] {
  const centre = times(plus(box.lo, box.hi), 0.5);
  const half = times(plus(box.hi, times(box.lo, -1)), 0.5);
  const facing = AROUND.filter((side) => dot(normalOf(side), eye.toward) > 0.12);
  const shown = facing.length > 0 ? facing : AROUND.filter((side) => onPaper(eye, normalOf(side))[1] > 0.5);
  const placed = shown
    .map((side) => {
      const out = times(normalOf(side), Math.abs(dot(half, normalOf(side))));
      const floor: Vector = [0, 0, -half[2]];
      const [x] = sheet(onPaper(eye, plus(plus(centre, out), floor)));
      return { side, x: Math.max(room.left + 30, Math.min(room.right - 30, x)) };
    })
    .sort((a, b) => a.x - b.x);
  placed.forEach((one, i) => {
    const before = placed[i - 1];
    if (before && one.x - before.x < 60) one.x = before.x + 60;
  });
  return placed.map(({ side, x }) =>
    element(
      'text',
      { class: 'side', 'font-size': 16, x: figure(x), y: figure(lowest + GAP), 'text-anchor': 'middle' },
      side,
    ),
  );
}
