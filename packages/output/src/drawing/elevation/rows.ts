import { axisOf, type Side } from '@dryfit/engine';
import { AXIS_NUMBER } from '../exploded/vector.js';
import type { SceneCut, SceneJoint, ScenePart } from '../scene.js';
import { acrossPaper, alongPaper, type Flank, flankOf, isLevel, type Sheet } from './look.js';
import { acrossRuns, alongRuns, type Measure, namesOf, recessMeasures, slotGroups } from './measures.js';
import { rectOn } from './outline.js';
import { depthOf, type Row } from './row.js';
import { depthIn, outAt, type Strip } from './strip.js';
import type { Asked } from './view.js';

export type Rows = Record<Flank, Row[]>;

/** Every measure as a row at one of the borders: of an edge beside it, of the face where there is most room. */
export function rowsBy(asked: Asked, sheet: Sheet, strips: readonly Strip[], joints: readonly SceneJoint[]): Rows {
  const { part, look, scene, main } = asked;
  const groups = slotGroups(scene, part);
  const mateOf = (cut: SceneCut): string =>
    namesOf([
      ...new Set(
        joints
          .filter((joint) => joint.host === part.part && joint.hostSide === cut.surface && samePlace(joint, cut))
          .map(({ entering }) => entering),
      ),
    ]);
  const measures = [...alongRuns(part, groups), ...acrossRuns(part, groups), ...recessMeasures(part, mateOf)];
  const rows: Rows = { top: [], bottom: [], left: [], right: [] };
  const depth = (flank: Flank) =>
    rows[flank].reduce((sum, row) => sum + depthOf(row, flank), strips.some((s) => s.flank === flank) ? 40 : 0);
  for (const measure of measures) {
    const own = flankOf(look, measure.surface);
    const onFace = measure.surface === look.face || (main && measure.title[0] === 'notch');
    if (!onFace && (own === undefined || !main)) continue;
    const level = measure.axis === acrossPaper(look);
    const choices: readonly Flank[] = !onFace && own ? [own] : level ? ['bottom', 'top'] : ['left', 'right'];
    const flank = choices.reduce((best, other) => (depth(other) < depth(best) ? other : best));
    const strip = strips.find((one) => one.side === measure.surface);
    rows[flank].push(rowOf(measure, sheet, flank, onFace ? undefined : strip));
  }
  if (main) {
    rows.bottom.push(overall(sheet, part, 'bottom'));
    rows.right.push(overall(sheet, part, 'right'));
  }
  return rows;
}

const samePlace = (a: SceneJoint, b: SceneCut): boolean => JSON.stringify(a.places[0]) === JSON.stringify(b.places[0]);

function rowOf(measure: Measure, sheet: Sheet, flank: Flank, strip: Strip | undefined): Row {
  const along = axisOf(isLevel(flank) ? sheet.look.at.right : sheet.look.at.top);
  const zero = zeroOf(sheet, flank, measure.zero);
  if (measure.axis !== along) {
    const said = measure.marks.map(({ label }) => label).join(' and ');
    return { zero, ticks: [], title: [...measure.title, `${said} from the ${measure.zero}`] };
  }
  return {
    zero,
    title: measure.title,
    ticks: measure.marks.map(({ at, label, cuts }) => ({
      at: alongPaper(sheet, along, at),
      label,
      from: strip
        ? Math.min(...cuts.map((cut) => outAt(strip, cut.mouth ? depthIn(strip, sheet, cut) : 0)))
        : -Math.max(...cuts.map((cut) => inward(sheet, flank, cut))),
    })),
  };
}

/** How far inside a border the middle of a slot lies, or the nearest of a recess. */
function inward(sheet: Sheet, flank: Flank, cut: SceneCut): number {
  const { left, right, top, bottom } = rectOn(sheet, cut.box);
  const half = cut.mouth ? 0.5 : 0;
  switch (flank) {
    case 'top':
      return top + (bottom - top) * half;
    case 'bottom':
      return sheet.height - bottom + (bottom - top) * half;
    case 'left':
      return left + (right - left) * half;
    case 'right':
      return sheet.width - right + (right - left) * half;
  }
}

function zeroOf(sheet: Sheet, flank: Flank, side: Side): number {
  const { look, width, height } = sheet;
  if (isLevel(flank)) return side === look.at.right ? width : 0;
  return side === look.at.bottom ? height : 0;
}

function overall(sheet: Sheet, part: ScenePart, flank: 'bottom' | 'right'): Row {
  const axis = axisOf(flank === 'bottom' ? sheet.look.at.right : sheet.look.at.top);
  const at = flank === 'bottom' ? sheet.width : sheet.height;
  return { zero: 0, ticks: [{ at, label: part.sizes[AXIS_NUMBER[axis]] ?? '', from: 4 }], title: [], overall: true };
}
