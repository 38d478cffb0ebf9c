import { isFace, SIDES } from '@dryfit/engine';
import { type Element, element } from '../element.js';
import type { Scene, ScenePart } from '../scene.js';
import { worstOf } from '../shape.js';
import { warningLines } from '../warning.js';
import { facesOf } from './faces.js';
import { Ink, LINE } from './ink.js';
import { lookAt } from './look.js';
import { namesOf } from './measures.js';
import { drawView } from './view.js';

export interface ElevationOptions {
  /** Length on paper of the longer side of the face; 520 if absent. */
  readonly size?: number | undefined;
}

const SIZE = 520;
const MARGIN = 16;
const BETWEEN = 36;

/** One part with everything cut into it, square on and dimensioned. */
export function elevation(scene: Scene, part: string, options: ElevationOptions = {}): Element {
  const found = scene.parts.find((one) => one.part === part);
  const ink = new Ink();
  ink.text(found ? part : `there is no part ${part}`, [0, 0], { size: 22, kind: 'title' });
  const lines = found ? said(scene, found) : [];
  lines.forEach((line, i) => {
    ink.text(line, [0, 22 + i * LINE], { kind: 'said' });
  });
  warningLines(scene).forEach((line, i) => {
    ink.text(line, [0, 24 + (lines.length + i) * LINE], { kind: 'warning' });
  });
  if (found?.box) drawViews(ink, scene, found, found.box, options.size ?? SIZE);
  const { left, top, right, bottom } = ink.taken;
  const box = [left - MARGIN, top - MARGIN, right - left + 2 * MARGIN, bottom - top + 2 * MARGIN];
  const label = found ? `${found.label}, dimensioned` : `no part ${part}`;
  return element(
    'svg',
    { class: 'dryfit-drawing elevation', viewBox: box.map(Math.round).join(' '), role: 'group', 'aria-label': label },
    element('title', {}, label),
    ...ink.drawn,
  );
}

/** What the head of the sheet says: what the part is, and which others are the same piece. */
function said(scene: Scene, part: ScenePart): readonly string[] {
  const [width, depth, height] = part.sizes.map((size) => size ?? 'not fixed');
  const alike = scene.parts
    .filter(({ same, part: id }) => same === part.same && id !== part.part)
    .map(({ part: id }) => id);
  return [
    `${scene.title}: ${part.attitude} of ${part.material}, width ${width}, depth ${depth}, height ${height} (${scene.units})`,
    ...(alike.length > 0 ? [`the same piece as ${namesOf(alike)}`] : []),
  ];
}

function drawViews(ink: Ink, scene: Scene, part: ScenePart, box: NonNullable<ScenePart['box']>, size: number): void {
  const longest = Math.max(...([0, 1, 2] as const).map((i) => box.hi[i] - box.lo[i]), 1e-3);
  const edges = SIDES.filter(
    (side) =>
      !isFace(side, part.attitude) && part.cuts.some((cut) => cut.surface === side && (cut.mouth || cut.recess)),
  );
  const asked = { scene, part, box, scale: size / longest, worst: worstOf(scene) };
  const views = facesOf(part).map((face, i) => ({
    face,
    ink: drawView({ ...asked, look: lookAt(face), main: i === 0, edges: i === 0 ? edges : [] }),
  }));
  const [first] = views;
  // Whichever way leaves the sheet nearer to square.
  const beside = first !== undefined && heightOf(first.ink) > widthOf(first.ink) * 0.9;
  let [x, y] = [0, ink.taken.bottom + BETWEEN / 2];
  for (const { face, ink: view } of views) {
    const { left, top } = view.taken;
    const [dx, dy] = [Math.round(x - left), Math.round(y - top)];
    const shifted = { class: 'view', 'data-face': face, transform: `translate(${dx} ${dy})` };
    ink.add(element('g', shifted, ...view.drawn));
    ink.take({ left: x, top: y, right: x + widthOf(view), bottom: y + heightOf(view) });
    if (beside) x += widthOf(view) + BETWEEN;
    else y += heightOf(view) + BETWEEN;
  }
}

const widthOf = ({ taken }: Ink): number => taken.right - taken.left;
const heightOf = ({ taken }: Ink): number => taken.bottom - taken.top;
