import { axisOf, isFace, SIDES } from '@dryfit/engine';
import { type Element, element } from './element.js';
import { facesOf } from './elevation/faces.js';
import { Ink, pathOf, rectOf, textWidth } from './elevation/ink.js';
import { alongPaper, flankOf, isLevel, lookAt, onFace, type Sheet, sheetOf } from './elevation/look.js';
import { mouthOnFace } from './elevation/marks.js';
import { middleOf } from './elevation/measures.js';
import { outlineOf, rectOn } from './elevation/outline.js';
import { linesOf } from './elevation/row.js';
import { AXIS_NUMBER, plus, times, type Vector } from './exploded/vector.js';
import type { Flat } from './exploded/view.js';
import type { Scene, SceneCut, ScenePart } from './scene.js';

const WIDTH = 360;
const HEIGHT = 220;
const BORDER = { left: 64, right: 64, top: 26, bottom: 74 };
const FIGURE = 12;
/** Lines of figures there is room for. */
const LINES = 3;

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
  ink.text(size('top'), [-8, sheet.height / 2 + 4], { ...figure, anchor: 'end' });
  const x = BORDER.left + (WIDTH - BORDER.left - BORDER.right - sheet.width) / 2;
  const y = BORDER.top + (HEIGHT - BORDER.top - BORDER.bottom - sheet.height) / 2;
  return [
    element('g', { transform: `translate(${Math.round(x)} ${Math.round(y)})` }, ...ink.drawn),
    element(
      'text',
      { x: WIDTH / 2, y: HEIGHT - 8, 'text-anchor': 'middle', 'font-size': FIGURE },
      `${face} face${datum}`,
    ),
  ];
}

function patchIn(sheet: Sheet, part: ScenePart, cut: SceneCut) {
  if (cut.kind === 'notch' || cut.kind === 'cant') return undefined;
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
  const ticks = joint.map((cut) => ({
    at: alongPaper(sheet, cut.run, middleOf(cut, cut.run)),
    label: cut.measured?.fromDatum ?? '',
    from: 0,
  }));
  const lines = linesOf(ticks, ({ label }) => (level ? textWidth(label, FIGURE) : FIGURE));
  const wide = Math.max(...ticks.map(({ label }) => textWidth(label, FIGURE))) + 6;
  joint.forEach((cut, i) => {
    const { at, label } = ticks[i] as (typeof ticks)[number];
    const line = lines[i] as number;
    if (line >= LINES) return;
    const start = onFace(sheet, centreOf(cut));
    const end: Flat = level ? [at, sheet.height + 5 + line * 14] : [sheet.width + 5 + line * wide, at];
    ink.path('extension', [start, end]);
    const place: Flat = level ? [at, end[1] + 11] : [end[0] + 3, at + 4];
    ink.text(label, place, { size: FIGURE, kind: 'figure', anchor: level ? 'middle' : 'start', clear: true });
  });
  return `, slots from the ${joint[0]?.measured?.datum}`;
}

const centreOf = ({ box }: SceneCut): Vector => times(plus(box.lo, box.hi), 0.5);
