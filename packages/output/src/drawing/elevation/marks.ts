import { axisOf } from '@dryfit/engine';
import { type Element, element } from '../element.js';
import { INDEX } from '../scene/figures.js';
import type { SceneCut, SceneJoint, ScenePart } from '../scene.js';
import { markOf } from '../shape.js';
import { type Ink, type Patch, pathOf, rectOf, round } from './ink.js';
import { acrossPaper, alongPaper, flankOf, isLevel, type Sheet } from './look.js';
import { isThrough, rectOn, wallsOf } from './outline.js';
import { asPatch, mouthOn, onStrip, placeOn, type Strip } from './strip.js';

type Mark = (shape: string) => string | undefined;

/** A slot, mortise or hole: what its cutter leaves open, and a cross at its middle. */
function mouthMark(cut: SceneCut, patch: Patch, worst: Mark): Element {
  const { left, top, right, bottom } = patch;
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const radius = Math.min(right - left, bottom - top) / 2;
  const mouth = element('rect', {
    class: `opening ${cut.kind}`,
    x: left,
    y: top,
    width: right - left,
    height: bottom - top,
    rx: cut.kind === 'disc' ? undefined : radius,
  });
  const cross = element('path', {
    class: 'middle',
    d: `M${round(x)} ${round(y - 5)}V${round(y + 5)}M${round(x - 5)} ${round(y)}H${round(x + 5)}`,
  });
  return markOf(cut, 'cut', worst(cut.shape), [mouth, cross]);
}

/** A slot as it lies on the face. */
export function mouthOnFace(sheet: Sheet, cut: SceneCut): Patch {
  const middle = rectOn(sheet, cut.box);
  const { length, width } = cut.mouth ?? { length: 0, width: 0 };
  const level = cut.run === acrossPaper(sheet.look);
  const [wide, high] = level ? [length, width] : [width, length];
  const [x, y] = [(middle.left + middle.right) / 2, (middle.top + middle.bottom) / 2];
  return {
    left: x - (wide * sheet.scale) / 2,
    right: x + (wide * sheet.scale) / 2,
    top: y - (high * sheet.scale) / 2,
    bottom: y + (high * sheet.scale) / 2,
  };
}

/** Everything that is cut into the face, and what of other cuts shows there. */
export function cutsOnFace(
  sheet: Sheet,
  part: ScenePart,
  strips: readonly Strip[],
  main: boolean,
  worst: Mark,
): readonly Element[] {
  const { face } = sheet.look;
  const lines = part.cuts.flatMap((cut): readonly Element[] => {
    if (cut.mouth) return [];
    if (cut.kind === 'bevel') return main ? [bevelMark(sheet, cut, worst)] : [];
    if (isThrough(cut, sheet))
      return main ? [markOf(cut, 'cut', worst(cut.shape), [pathOf('outline', wallsOf(cut, sheet))])] : [];
    if (cut.surface === face)
      return [markOf(cut, 'cut', worst(cut.shape), [rectOf(`opening ${cut.kind}`, rectOn(sheet, cut.box))])];
    if (!main || strips.some(({ side }) => side === cut.surface)) return [];
    const kind = flankOf(sheet.look, cut.surface) ? 'opening' : 'behind';
    return cut.kind === 'notch'
      ? [markOf(cut, 'cut', worst(cut.shape), [rectOf(`${kind} notch`, rectOn(sheet, cut.box))])]
      : [];
  });
  const mouths = part.cuts.filter((cut) => cut.mouth && cut.surface === face);
  return [...lines, ...mouths.map((cut) => mouthMark(cut, mouthOnFace(sheet, cut), worst))];
}

/** Where a bevelled end has its heel: seen from inside a line, from outside hidden. */
function bevelMark(sheet: Sheet, cut: SceneCut, worst: Mark): Element {
  const { left, right, top, bottom } = rectOn(sheet, cut.box);
  const flank = flankOf(sheet.look, cut.surface);
  const line =
    flank === undefined || isLevel(flank)
      ? ([
          [left, flank === 'top' ? bottom : top],
          [right, flank === 'top' ? bottom : top],
        ] as const)
      : ([
          [flank === 'left' ? right : left, top],
          [flank === 'left' ? right : left, bottom],
        ] as const);
  return markOf(cut, 'cut', worst(cut.shape), [pathOf(cut.outer === sheet.look.face ? 'behind' : 'outline', line)]);
}

/** A strip with all that is cut into its edge. */
export function drawStrip(ink: Ink, sheet: Sheet, part: ScenePart, strip: Strip, worst: Mark): void {
  const whole = asPatch(
    strip.flank,
    sheet,
    [0, isLevel(strip.flank) ? sheet.width : sheet.height],
    [strip.near, strip.far],
  );
  ink.take(whole);
  ink.add(element('g', { 'data-edge': strip.side }, rectOf('outline strip', whole)));
  for (const cut of part.cuts) {
    if (cut.surface !== strip.side || cut.kind === 'bevel' || isThrough(cut, sheet)) continue;
    if (cut.mouth) ink.add(mouthMark(cut, mouthOn(strip, sheet, cut), worst));
    else ink.add(markOf(cut, 'cut', worst(cut.shape), [rectOf(`opening ${cut.kind}`, onStrip(strip, sheet, cut.box))]));
  }
}

/** Where another part meets this one: its outline on the face or strip, or a line along an edge. */
export function jointMark(
  sheet: Sheet,
  part: ScenePart,
  joint: SceneJoint,
  strips: readonly Strip[],
  worst: Mark,
): Element {
  const side = joint.entering === part.part ? joint.enteringSide : joint.hostSide;
  const flank = flankOf(sheet.look, side);
  const box = joint.contact;
  if (!box) return markOf(joint, 'joint', worst(joint.shape), []);
  const strip = strips.find((one) => one.side === side);
  if (flank === undefined) {
    const kind = side === sheet.look.face ? 'footprint' : 'footprint behind';
    return markOf(joint, 'joint', worst(joint.shape), [rectOf(kind, rectOn(sheet, box))]);
  }
  if (strip && strip.toe === undefined)
    return markOf(joint, 'joint', worst(joint.shape), [rectOf('footprint', onStrip(strip, sheet, box))]);
  const axis = axisOf(isLevel(flank) ? sheet.look.at.right : sheet.look.at.top);
  const place = placeOn(flank, sheet);
  const ends = [box.lo, box.hi].map((p) => place(alongPaper(sheet, axis, p[INDEX[axis]]), 4));
  return markOf(joint, 'joint', worst(joint.shape), [pathOf('footprint', ends)]);
}
