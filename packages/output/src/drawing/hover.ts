import { axisOf, isFace, SIDES } from '@dryfit/engine';
import { type Element, element } from './element.js';
import { facesOf } from './elevation/faces.js';
import { Ink, pathOf, rectOf, textWidth } from './elevation/ink.js';
import { alongPaper, flankOf, isLevel, lookAt, onFace, type Sheet, sheetOf } from './elevation/look.js';
import { mouthOnFace } from './elevation/marks.js';
import { middleOf } from './elevation/measures.js';
import { outlineOf, rectOn } from './elevation/outline.js';
import { AXIS_NUMBER } from './exploded/vector.js';
import type { Scene, SceneCut, ScenePart } from './scene.js';

const WIDTH = 360;
const HEIGHT = 220;
const BORDER = { left: 16, right: 74, top: 30, bottom: 58 };
const FIGURE = 12;

/** A part at a glance, small enough for a hover: its face, its overall sizes, and the first row of slots measured. */
export function hoverDrawing(scene: Scene, part: string): Element {
  const found = scene.parts.find((one) => one.part === part);
  const label = found?.label ?? `no part ${part}`;
  const children = found?.box
    ? drawn(found, found.box)
    : [element('text', { x: 16, y: 30 }, 'not fixed, so not drawn')];
  return element(
    'svg',
    { class: 'dryfit-drawing hover', viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: 'img', 'aria-label': label },
    element('title', {}, label),
    ...children,
  );
}

function drawn(part: ScenePart, box: NonNullable<ScenePart['box']>): readonly Element[] {
  const [face = 'front'] = facesOf(part);
  const look = lookAt(face);
  const unscaled = sheetOf(look, box, 1);
  const scale = Math.min(
    (WIDTH - BORDER.left - BORDER.right) / Math.max(unscaled.width, 1e-3),
    (HEIGHT - BORDER.top - BORDER.bottom) / Math.max(unscaled.height, 1e-3),
  );
  const sheet = sheetOf(look, box, scale);
  const ink = new Ink();
  const outline = outlineOf(part, sheet);
  ink.add(pathOf('face outline', [...outline, outline[0] ?? [0, 0]]));
  for (const cut of part.cuts) {
    const patch = patchIn(sheet, part, cut);
    if (patch) ink.add(rectOf(`opening ${cut.kind}`, patch));
  }
  const figure = { size: FIGURE, kind: 'figure' } as const;
  const size = (side: 'right' | 'top') => part.sizes[AXIS_NUMBER[axisOf(look.at[side])]] ?? '';
  const datum = drawDatum(ink, sheet, part);
  ink.text(size('right'), [sheet.width / 2, -8], { ...figure, anchor: 'middle' });
  ink.text(size('top'), [sheet.width + 14, sheet.height / 2 + 4], figure);
  ink.text(`${face} face${datum}`, [0, sheet.height + 46], { size: FIGURE, kind: 'said' });
  const x = BORDER.left + (WIDTH - BORDER.left - BORDER.right - sheet.width) / 2;
  const y = BORDER.top + (HEIGHT - BORDER.top - BORDER.bottom - sheet.height) / 2;
  return [element('g', { transform: `translate(${Math.round(x)} ${Math.round(y)})` }, ...ink.drawn)];
}

function patchIn(sheet: Sheet, part: ScenePart, cut: SceneCut) {
  if (cut.kind === 'notch') return undefined;
  if (cut.surface === sheet.look.face) return cut.mouth ? mouthOnFace(sheet, cut) : rectOn(sheet, cut.box);
  // What is cut into an edge is shown from the face as deep as it goes in.
  return cut.mouth && !isFace(cut.surface, part.attitude) ? rectOn(sheet, cut.box) : undefined;
}

/** Where the first row of slots lies, from its datum; returns the words that say so. */
function drawDatum(ink: Ink, sheet: Sheet, part: ScenePart): string {
  const shown = SIDES.flatMap((side) => {
    const cuts = part.cuts.filter((cut) => cut.measured && cut.surface === side);
    const joint = cuts.filter((cut) => cut.joint === cuts[0]?.joint);
    const flank = cuts[0]?.measured && flankOf(sheet.look, cuts[0].measured.datum);
    return flank && side !== sheet.look.face && !flankOf(sheet.look, side) ? [] : flank ? [{ joint, flank }] : [];
  }).sort((a, b) => b.joint.length - a.joint.length)[0];
  if (!shown) return '';
  const { joint, flank } = shown;
  const level = !isLevel(flank);
  const datum = joint[0]?.measured?.datum;
  let end = -Infinity;
  for (const cut of [...joint].sort((a, b) => middleOf(a, a.run) - middleOf(b, b.run))) {
    const along = alongPaper(sheet, cut.run, middleOf(cut, cut.run));
    const [mx, my] = onFace(
      sheet,
      [0, 1, 2].map((i) => ((cut.box.lo[i] as number) + (cut.box.hi[i] as number)) / 2) as unknown as readonly [
        number,
        number,
        number,
      ],
    );
    const label = cut.measured?.fromDatum ?? '';
    const at = level ? ([along, sheet.height + 16] as const) : ([sheet.width + 8, along + 4] as const);
    const need = level ? textWidth(label, FIGURE) + 4 : FIGURE + 2;
    void end;
    ink.path(
      'extension',
      level
        ? [
            [mx, my],
            [along, sheet.height + 6],
          ]
        : [
            [mx, my],
            [sheet.width + 6, along],
          ],
    );
    if (Math.abs(along - end) >= need || end === -Infinity) {
      ink.text(label, at, { size: FIGURE, kind: 'figure', anchor: level ? 'middle' : 'start' });
      end = along;
    }
  }
  return datum ? `, slots from ${datum}` : '';
}
