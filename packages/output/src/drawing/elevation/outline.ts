import { axisOf } from '@dryfit/engine';
import type { Flat } from '../exploded/view.js';
import { planeAt, TOUCH } from '../scene/figures.js';
import type { SceneBox, SceneCut, ScenePart } from '../scene.js';
import { type Patch, patchOf } from './ink.js';
import { type Flank, onFace, type Sheet } from './look.js';

const CORNERS: readonly (readonly [Flank, Flank])[] = [
  ['left', 'top'],
  ['right', 'top'],
  ['right', 'bottom'],
  ['left', 'bottom'],
];

/** Whether a notch or cant goes through the thickness, and so shows in the outline of the face. */
export const isThrough = (cut: SceneCut, sheet: Sheet): boolean =>
  (cut.kind === 'notch' || cut.kind === 'cant') && cut.run === axisOf(sheet.look.face);

/** The outline of a face, with the notches and the cant at its corners. */
export function outlineOf(part: ScenePart, sheet: Sheet): readonly Flat[] {
  const notches = part.cuts.filter((cut) => isThrough(cut, sheet));
  return CORNERS.flatMap(([flat, upright], i): readonly Flat[] => {
    const corner: Flat = [flat === 'left' ? 0 : sheet.width, upright === 'top' ? 0 : sheet.height];
    const notch = notches.find((cut) => [flat, upright].every((flank) => reaches(cut.box, sheet, flank)));
    if (!notch) return [corner];
    const inner = innerCorner(notch, sheet, corner);
    const ends: readonly [Flat, Flat] = [
      [corner[0], inner[1]],
      [inner[0], corner[1]],
    ];
    const steps: readonly Flat[] = notch.kind === 'cant' ? ends : [ends[0], inner, ends[1]];
    return i % 2 === 0 ? steps : [...steps].reverse();
  });
}

const reaches = (box: SceneBox, { look, box: own }: Sheet, flank: Flank): boolean =>
  Math.abs(planeAt(box, look.at[flank]) - planeAt(own, look.at[flank])) < TOUCH;

/** The corner of a notch that lies inside the face. */
function innerCorner(notch: SceneCut, sheet: Sheet, corner: Flat): Flat {
  const { left, right, top, bottom } = rectOn(sheet, notch.box);
  return [
    Math.abs(left - corner[0]) > Math.abs(right - corner[0]) ? left : right,
    Math.abs(top - corner[1]) > Math.abs(bottom - corner[1]) ? top : bottom,
  ];
}

/** The two walls of a notch, or the line of a cant. */
export function wallsOf(notch: SceneCut, sheet: Sheet): readonly Flat[] {
  const walls = notchWalls(notch, sheet);
  return notch.kind === 'cant' ? walls.filter((_, i) => i !== 1) : walls;
}

function notchWalls(notch: SceneCut, sheet: Sheet): readonly Flat[] {
  const { left, right, top, bottom } = rectOn(sheet, notch.box);
  const x = reaches(notch.box, sheet, 'left') ? [left, right] : [right, left];
  const y = reaches(notch.box, sheet, 'top') ? [top, bottom] : [bottom, top];
  return [
    [x[0] as number, y[1] as number],
    [x[1] as number, y[1] as number],
    [x[1] as number, y[0] as number],
  ];
}

/** A box of the cabinet frame as it falls on the face. */
export const rectOn = (sheet: Sheet, box: SceneBox): Patch => patchOf([onFace(sheet, box.lo), onFace(sheet, box.hi)]);
