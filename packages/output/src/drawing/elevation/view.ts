import { axisOf, isFace, type Side } from '@dryfit/engine';
import { surfaceName } from '../../print/surface.js';
import { element } from '../element.js';
import { AXIS_NUMBER } from '../exploded/vector.js';
import type { Scene, SceneCut, SceneJoint, ScenePart } from '../scene.js';
import { markOf } from '../shape.js';
import { drawGrain } from './grain.js';
import { Ink, LINE, pathOf, TEXT } from './ink.js';
import {
  acrossPaper,
  alongPaper,
  FLANKS,
  type Flank,
  flankOf,
  isLevel,
  type Look,
  type Sheet,
  sheetOf,
  upPaper,
} from './look.js';
import { cutsOnFace, drawStrip, jointMark } from './marks.js';
import { acrossRuns, alongRuns, type Measure, namesOf, recessMeasures, slotGroups } from './measures.js';
import { outlineOf, rectOn } from './outline.js';
import { depthOf, drawRow, type Row } from './row.js';
import { depthIn, GAP, outAt, placeOn, type Strip, stripOf } from './strip.js';

/** What is drawn of a part in one view. */
export interface Asked {
  readonly scene: Scene;
  readonly part: ScenePart;
  readonly box: NonNullable<ScenePart['box']>;
  readonly look: Look;
  readonly scale: number;
  /** Edges laid out beside the face; all in the first view of a part. */
  readonly edges: readonly Side[];
  /** The view that also shows what no other does. */
  readonly main: boolean;
  readonly worst: (shape: string) => string | undefined;
}

const SEEN: Readonly<Record<Side, string>> = {
  left: 'from the left',
  right: 'from the right',
  front: 'from the front',
  rear: 'from the rear',
  top: 'from above',
  bottom: 'from below',
};

/** A face of a part square on, the edges with slots laid against it, and everything measured. */
export function drawView(asked: Asked): Ink {
  const { part, look, scene, worst, main } = asked;
  const sheet = sheetOf(look, asked.box, asked.scale);
  const ink = new Ink();
  ink.take({ left: 0, top: 0, right: sheet.width, bottom: sheet.height });
  const strips = asked.edges.flatMap((side) => {
    const flank = flankOf(look, side);
    return flank ? [stripOf(sheet, part, side, flank)] : [];
  });
  const outline = pathOf('face outline', [...outlineOf(part, sheet), outlineOf(part, sheet)[0] ?? [0, 0]]);
  ink.add(
    main
      ? markOf(part, 'part', worst(part.shape), [outline])
      : element('g', { class: 'part', 'data-again': part.shape }, outline),
  );
  for (const strip of strips) drawStrip(ink, sheet, part, strip, worst);
  const joints = scene.joints.filter(({ entering, host }) => entering === part.part || host === part.part);
  ink.add(...jointsHere(asked, joints).map((joint) => jointMark(sheet, part, joint, strips, worst)));
  ink.add(...cutsOnFace(sheet, part, strips, main, worst));
  const grain = drawGrain(ink, sheet, part, scene);
  const rows = rowsBy(asked, sheet, strips, joints);
  for (const flank of FLANKS) drawFlank(ink, asked, sheet, flank, strips, rows[flank], joints);
  const seen = `${surfaceName(part, look.face)}, seen ${SEEN[look.face]}${grain ? '' : `; grain along its ${wayOf(sheet, part)}`}`;
  const { top } = ink.taken;
  ink.text(seen, [0, top - 12], { kind: 'heading' });
  return ink;
}

const wayOf = (sheet: Sheet, part: ScenePart): string =>
  part.grain === acrossPaper(sheet.look)
    ? 'width on paper'
    : part.grain === upPaper(sheet.look)
      ? 'height on paper'
      : 'thickness';

/** Joints are drawn once: on the face where they lie, and those in the edges and on a face not shown, in the first view. */
function jointsHere({ part, look, main }: Asked, joints: readonly SceneJoint[]): readonly SceneJoint[] {
  return joints.filter((joint) => {
    const side = joint.entering === part.part ? joint.enteringSide : joint.hostSide;
    if (side === look.face) return true;
    if (!main) return false;
    return !isFace(side, part.attitude) || !part.cuts.some((cut) => cut.surface === side);
  });
}

type Rows = Record<Flank, Row[]>;

/** Every measure as a row at one of the borders: of an edge beside it, of the face where there is most room. */
function rowsBy(asked: Asked, sheet: Sheet, strips: readonly Strip[], joints: readonly SceneJoint[]): Rows {
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

/** A border from the face outward: hatching or band, strip, words, rows. */
function drawFlank(
  ink: Ink,
  asked: Asked,
  sheet: Sheet,
  flank: Flank,
  strips: readonly Strip[],
  rows: readonly Row[],
  joints: readonly SceneJoint[],
): void {
  const { part, look } = asked;
  const side = look.at[flank];
  const place = placeOn(flank, sheet);
  const length = isLevel(flank) ? sheet.width : sheet.height;
  const strip = strips.find((one) => one.flank === flank);
  const datum = part.cuts.some((cut) => cut.measured?.datum === side);
  const band = part.bands.find((one) => one.side === side);
  if (datum)
    ink.add(
      pathOf(
        'hatch',
        [place(0, 2), place(length, 2)],
        ...hatching(length).map(([a, b]) => [place(a, 2), place(b, 10)]),
      ),
    );
  if (band) ink.add(pathOf('band', [place(0, 0), place(length, 0)]));
  let out = strip ? strip.far + 2 : GAP;
  if (strip) drawAcross(ink, part, strip, sheet, length);
  const words = wordsFor(asked, side, datum, band?.band, strip ? [] : joints);
  const [x, y] = place(length / 2, out + LINE / 2);
  if (isLevel(flank)) ink.text(words, [x, y + TEXT * 0.35], { anchor: 'middle', kind: 'side' });
  else ink.text(words, [x + TEXT * 0.35, y], { anchor: 'middle', kind: 'side', upward: true });
  out += LINE + 2;
  for (const row of rows) {
    drawRow(ink, row, flank, out, length, place);
    out += depthOf(row, flank);
  }
}

const STEP = 9;

/** Slanted strokes along a datum edge. */
function hatching(length: number): readonly (readonly [number, number])[] {
  const count = Math.max(1, Math.floor((length - 6) / STEP));
  return Array.from({ length: count + 1 }, (_, i) => [i * STEP, Math.min(length, i * STEP + 6)] as const);
}

function wordsFor(
  { part }: Asked,
  side: Side,
  datum: boolean,
  band: string | undefined,
  joints: readonly SceneJoint[],
): string {
  const bevel = part.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === side);
  const mates = joints.flatMap((joint) => {
    if (joint.entering === part.part && joint.enteringSide === side) return [joint.host];
    return joint.host === part.part && joint.hostSide === side ? [joint.entering] : [];
  });
  const measured = part.cuts.some((cut) => cut.measured?.from.kind === 'end' && cut.measured.from.side === side);
  return [
    `${datum ? 'datum: ' : measured ? 'reference: ' : ''}${surfaceName(part, side)}`,
    ...(band === undefined ? [] : [`banded ${band}`]),
    ...(bevel?.outer ? [`bevelled 45°, toe on the ${surfaceName(part, bevel.outer)}`] : []),
    ...(mates.length > 0 ? [`to ${namesOf([...new Set(mates)])}`] : []),
  ].join(', ');
}

/** How far in from its reference the slots of an edge lie, as a figure at the end of the strip. */
function drawAcross(ink: Ink, part: ScenePart, strip: Strip, sheet: Sheet, length: number): void {
  const slots = part.cuts.filter((cut) => cut.measured && cut.surface === strip.side);
  const shown = new Map(
    slots.map((cut) => [`${cut.measured?.across} ${cut.measured?.from.kind} ${cut.measured?.from.side}`, cut]),
  );
  const place = placeOn(strip.flank, sheet);
  let at = length + 6;
  for (const cut of shown.values()) {
    const { from, across } = cut.measured as NonNullable<SceneCut['measured']>;
    const middle = outAt(strip, depthIn(strip, sheet, cut));
    const near =
      from.kind === 'face' ? from.side === sheet.look.face : (strip.toe === 'near') === (from.kind === 'toe');
    const edge = near ? strip.near : strip.far;
    ink.path('dimension', [place(at + 3, edge), place(at + 3, middle)]);
    ink.path('extension', [place(length, edge), place(at + 7, edge)], [place(length, middle), place(at + 7, middle)]);
    const [x, y] = place(at + (isLevel(strip.flank) ? 10 : 12), (strip.near + strip.far) / 2);
    if (isLevel(strip.flank)) ink.text(across, [x, y + TEXT * 0.35], { kind: 'figure' });
    else ink.text(across, [x, y + TEXT * 0.5], { anchor: 'middle', kind: 'figure' });
    at += 18 + across.length * 8;
  }
}
