import { isFace, type Side } from '@dryfit/engine';
import { surfaceName } from '../../print/surface.js';
import { element } from '../element.js';
import { drawMarks } from '../marked.js';
import type { Scene, SceneJoint, ScenePart } from '../scene.js';
import { markOf } from '../shape.js';
import { alongOnFace, sayAlong } from './along.js';
import { drawFlank } from './flank.js';
import { drawGrain } from './grain.js';
import { Ink, pathOf, wordsIn } from './ink.js';
import { acrossPaper, FLANKS, flankOf, type Look, onFace, type Sheet, sheetOf, upPaper } from './look.js';
import { cutsOnFace, drawStrip, jointMark } from './marks.js';
import { outlineOf } from './outline.js';
import { rowsBy } from './rows.js';
import { stripOf } from './strip.js';

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
  ink.add(...cutsOnFace(sheet, part, strips, main, worst), ...alongOnFace(sheet, part, main, worst));
  // In the first view, on top of all else: a place inside the part shows on no face.
  const marks = main ? (scene.marks ?? []).filter(({ parts }) => parts.includes(part.part)) : [];
  const grain = drawGrain(ink, sheet, part, scene);
  const rows = rowsBy(asked, sheet, strips, joints);
  for (const flank of FLANKS) drawFlank(ink, asked, sheet, flank, strips, rows[flank], joints);
  sayAlong(ink, part, look.face, main);
  const seen = `${surfaceName(part, look.face)}, seen ${SEEN[look.face]}${grain ? '' : `; grain along its ${wayOf(sheet, part)}`}`;
  const { top } = ink.taken;
  ink.text(seen, [0, top - 12], { kind: 'heading', size: 16 });
  const marked = drawMarks(marks, ({ ends }, end) => onFace(sheet, ends[end]), ink.written);
  for (const patch of wordsIn(marked)) ink.take(patch);
  ink.onTop(...marked);
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
